"""Every weight is Vollkorn's own: on screen as on paper, from the first paint on."""

import json
import os
import shutil
import subprocess
import sys
from io import BytesIO
from pathlib import Path

import fontpkg_vollkorn
import pytest
import typst
import uharfbuzz
from PIL import ImageFont
from PySide6.QtGui import QFont, QFontDatabase, QFontMetricsF, QRawFont, QTextDocument

from binder.paper.press import our_fonts
from ui.look import fonts
from ui.look.theme import base_font

ROOT = Path(__file__).parents[2]
FOLDER = Path(fontpkg_vollkorn.__file__).parent / "files"
PIXELS = 1000
"""As many as Vollkorn has units to the em, so that a pixel is a unit."""
WORD = "Hamburgefonstiv"
ALL = [(name, weight) for name, weights in fonts.WEIGHTS.items() for weight in weights]


def lettering(name, weight):
    """The font that the program asks Qt for, a unit to the pixel."""
    font = base_font(20)
    font.setPixelSize(PIXELS)
    font.setWeight(QFont.Weight(weight))
    font.setItalic(name == fonts.ITALIC)
    return font


def style(name, weight):
    """What the type's makers call a weight."""
    called = {400: "Regular", 500: "Medium", 600: "SemiBold", 700: "Bold"}[weight]
    return f"{called} Italic".removeprefix("Regular ") if name == fonts.ITALIC else called


@pytest.fixture(scope="module")
def on_paper():
    """The width of a word in every weight, as Typst sets them from the variable fonts."""
    asked = "".join(
        f'#context [#metadata(measure(text(font: "Vollkorn", size: {PIXELS}pt, weight: {weight}, '
        f'style: "{"italic" if name == fonts.ITALIC else "normal"}")[{WORD}]).width.pt())<width>]'
        for name, weight in ALL
    )
    told = typst.query(
        asked.encode(), "<width>", field="value", font_paths=our_fonts(), ignore_system_fonts=True
    )
    return dict(zip(ALL, json.loads(told), strict=True))


@pytest.mark.parametrize(("name", "weight"), ALL)
class TestEveryWeight:
    def test_its_letters_are_as_wide_as_the_variable_font_says(self, look, name, weight):
        """FreeType reads `fvar`, `avar`, `gvar` and `HVAR` here."""
        variable = ImageFont.truetype(FOLDER / name, PIXELS, layout_engine=ImageFont.Layout.BASIC)
        variable.set_variation_by_axes([weight])
        raw = QRawFont.fromFont(lettering(name, weight))
        for letter in "aegnostwTÆß’":
            (glyph,) = raw.glyphIndexesForString(letter)
            (advance,) = (point.x() for point in raw.advancesForGlyphIndexes([glyph]))
            assert advance == pytest.approx(variable.getlength(letter), abs=1), letter

    def test_a_word_is_as_wide_as_on_paper(self, look, on_paper, name, weight):
        width = QFontMetricsF(lettering(name, weight)).horizontalAdvance(WORD)
        assert width == pytest.approx(on_paper[name, weight], abs=len(WORD))

    def test_the_file_names_its_weight_itself(self, look, name, weight):
        """As FreeType reads it, and Qt."""
        variable = uharfbuzz.Face(uharfbuzz.Blob.from_file_path(str(FOLDER / name)))
        named = style(name, weight)
        pinned = ImageFont.truetype(BytesIO(fonts.pinned(variable, weight)))
        assert pinned.getname() == ("Vollkorn", named)
        assert QFontDatabase.weight("Vollkorn", named) == weight
        assert QFontDatabase.italic("Vollkorn", named) == (name == fonts.ITALIC)

    def test_what_is_asked_for_is_what_is_drawn_with(self, look, name, weight):
        raw = QRawFont.fromFont(lettering(name, weight))
        assert (raw.familyName(), raw.styleName()) == ("Vollkorn", style(name, weight))


def test_bold_and_italic_of_a_document_are_weights_of_their_own(look):
    document = QTextDocument()
    document.setDefaultFont(base_font(16.5))
    document.setHtml("<p>a<b>b</b><i>c</i><b><i>d</i></b></p>")
    fragments = document.begin().begin()
    found = []
    while not fragments.atEnd():
        font = fragments.fragment().charFormat().font().resolve(document.defaultFont())
        found.append(QRawFont.fromFont(font).styleName())
        fragments += 1
    assert found == ["Regular", "Bold", "Italic", "Bold Italic"]


def test_a_first_start_has_them_at_the_first_paint_and_leaves_nothing(tmp_path, sample_folder):
    shelf = shutil.copytree(sample_folder, tmp_path / "shelf")
    program = (
        "import sys, pathlib\n"
        "from PySide6.QtGui import QFont, QRawFont\n"
        "from PySide6.QtWidgets import QApplication\n"
        "from ui.app import main\n"
        "from ui.look.theme import base_font\n"
        "def painted():\n"
        "    font = base_font(20)\n"
        "    font.setWeight(QFont.Weight.DemiBold)\n"
        "    print(QRawFont.fromFont(font).styleName())\n"
        "    QApplication.closeAllWindows()\n"
        "sys.exit(main([sys.argv[1]], painted))"
    )
    places = {f"XDG_{name}_HOME": str(tmp_path / name) for name in ("CACHE", "CONFIG", "DATA")}
    done = subprocess.run(
        [sys.executable, "-c", program, str(shelf)], cwd=ROOT, check=False, timeout=60,
        env=os.environ | places | {"QT_QPA_PLATFORM": "offscreen", "HOME": str(tmp_path)},
        capture_output=True, text=True,
    )  # fmt: skip
    assert (done.returncode, done.stdout) == (0, "SemiBold\n"), done.stderr
    assert not (tmp_path / "CACHE").exists()
