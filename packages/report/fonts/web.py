"""Packs the faces of this folder for web pages: python3 web.py (fontTools and brotli). Nothing in them is changed."""

from fontTools.ttLib import TTFont

for name in ("thrum-sans-regular", "thrum-sans-semibold", "thrum-serif-semibold"):
    font = TTFont(f"{name}.ttf")
    font.flavor = "woff2"
    font.save(f"{name}.woff2")
