"""Makes the three faces of this folder from their sources: python3 subset.py SOURCE_FOLDER (fontTools 4.38).

SOURCE_FOLDER holds SourceSans3_400Regular.ttf, SourceSans3_600SemiBold.ttf and SourceSerif4_600SemiBold.ttf.
"""

import os
import sys

from fontTools import subset
from fontTools.ttLib import TTFont

RANGES = [
    (0x20, 0x7E), (0xA0, 0x17F), (0x192, 0x192), (0x218, 0x21B), (0x1E80, 0x1E85), (0x1E9E, 0x1EF9), (0x2BC, 0x2BC),
    (0x2C6, 0x2C7), (0x2D8, 0x2DD), (0x300, 0x304), (0x306, 0x30C), (0x327, 0x328), (0x370, 0x45F), (0x490, 0x491),
    (0x2009, 0x200B), (0x2010, 0x2015), (0x2018, 0x201E), (0x2020, 0x2022), (0x2026, 0x2026), (0x202F, 0x2033),
    (0x2039, 0x203A), (0x2044, 0x2044), (0x2070, 0x207B), (0x2080, 0x2089), (0x20AC, 0x20AC), (0x2116, 0x2116),
    (0x2122, 0x2122), (0x2150, 0x215E), (0x2190, 0x2193), (0x2202, 0x2202), (0x2206, 0x2206), (0x220F, 0x2212),
    (0x221A, 0x221A), (0x221E, 0x221E), (0x2248, 0x2248), (0x2260, 0x2265), (0xFFFD, 0xFFFD),
]
FACES = [
    ("SourceSans3_400Regular.ttf", "thrum-sans-regular.ttf", "Thrum Sans", "Regular"),
    ("SourceSans3_600SemiBold.ttf", "thrum-sans-semibold.ttf", "Thrum Sans", "SemiBold"),
    ("SourceSerif4_600SemiBold.ttf", "thrum-serif-semibold.ttf", "Thrum Serif", "SemiBold"),
]
LEGAL_NAMES = {0, 7, 13, 14}


def rename(font, family, style):
    """The licence reserves the old name for unmodified faces; copyright and licence stay as they were."""
    table = font["name"]
    table.names = [n for n in table.names if n.nameID in LEGAL_NAMES and n.platformID == 3 and n.langID == 0x409]
    plain = f"{family.replace(' ', '')}-{style}"
    names = {1: family if style == "Regular" else f"{family} {style}", 2: "Regular", 3: f"Thrum;{plain}", 4: f"{family} {style}"}
    names.update({5: "Version 1.000", 6: plain})
    if style != "Regular":
        names.update({16: family, 17: style})
    for number, text in names.items():
        table.setName(text, number, 3, 1, 0x409)


def main(sources):
    wanted = {code for first, last in RANGES for code in range(first, last + 1)}
    for source, target, family, style in FACES:
        font = TTFont(os.path.join(sources, source))
        options = subset.Options()
        options.layout_features = ["kern", "ccmp", "locl"]
        options.hinting = False
        options.name_IDs = ["*"]
        options.notdef_outline = True
        options.glyph_names = False
        options.drop_tables += ["DSIG", "STAT", "meta"]
        subsetter = subset.Subsetter(options)
        subsetter.populate(unicodes=wanted)
        subsetter.subset(font)
        rename(font, family, style)
        font.save(target)


main(sys.argv[1])
