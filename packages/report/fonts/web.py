"""Packs the faces of this folder for web pages: python3 web.py (fontTools and brotli).

Each face in two parts, so that a page in a Latin script does not wait for Greek, Cyrillic and Vietnamese. The style sheet of the
desk names the same ranges.
"""

from fontTools import subset
from fontTools.ttLib import TTFont

LATIN = {*range(0x20, 0x180), *range(0x2009, 0x2070), 0x20AC, 0x2122, *range(0x2190, 0x2194), *range(0x2200, 0x2270), 0xFFFD}

for name in ("thrum-sans-regular", "thrum-sans-semibold", "thrum-serif-semibold"):
    for part in ("latin", "more"):
        font = TTFont(f"{name}.ttf")
        wanted = {code for code in font.getBestCmap() if (code in LATIN) == (part == "latin")}
        options = subset.Options()
        options.layout_features = ["*"]
        options.name_IDs = ["*"]
        options.glyph_names = False
        subsetter = subset.Subsetter(options)
        subsetter.populate(unicodes=wanted)
        subsetter.subset(font)
        font.flavor = "woff2"
        font.save(f"{name}-{part}.woff2")
