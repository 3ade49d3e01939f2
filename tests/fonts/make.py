"""Makes the font of the tests: boxes for a few characters that the fonts of the labels lack. Needs fontTools.

    python3 make.py

`boxes.ttf` may be embedded; `shut.ttf` is the same and forbids it (OS/2 fsType 2, restricted licence).
"""

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen

LETTERS = "林楓虫蝶山"


def box(strokes):
    pen = TTGlyphPen(None)
    for left in range(100, 100 + strokes * 160, 160):
        pen.moveTo((left, 0))
        pen.lineTo((left, 800))
        pen.lineTo((left + 80, 800))
        pen.lineTo((left + 80, 0))
        pen.closePath()
    return pen.glyph()


def font(path, may_embed):
    names = [".notdef"] + [f"uni{ord(letter):04X}" for letter in LETTERS]
    builder = FontBuilder(1000, isTTF=True)
    builder.setupGlyphOrder(names)
    builder.setupCharacterMap({ord(letter): name for letter, name in zip(LETTERS, names[1:])})
    builder.setupGlyf({name: box(1 + at) for at, name in enumerate(names)})
    builder.setupHorizontalMetrics({name: (1000, 100) for name in names})
    builder.setupHorizontalHeader(ascent=880, descent=-120)
    builder.setupNameTable({"familyName": "Invented Boxes", "styleName": "Regular", "psName": "InventedBoxes"})
    builder.setupOS2(sTypoAscender=880, sTypoDescender=-120, fsType=0 if may_embed else 2)
    builder.setupPost()
    builder.save(path)


font("boxes.ttf", True)
font("shut.ttf", False)
