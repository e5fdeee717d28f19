"""Themes and letters."""

import shutil

import pytest
from PySide6.QtGui import QFont, QRawFont, QTextDocument, QTextLayout
from PySide6.QtWidgets import QLabel, QPushButton

from ui.look import fonts, theme
from ui.look.theme import Look, base_font, load, type_sizes


@pytest.fixture(scope="module")
def cuts(tmp_path_factory, qapp):
    """All cuts in a folder of their own: those set-up has made, or made now."""
    where = tmp_path_factory.mktemp("letters")
    for cut in fonts.CUTS:
        made = fonts.folder() / fonts._path(where, cut).name
        if made.is_file():
            shutil.copy(made, where)
        else:
            fonts.make_cut(cut, where)
    fonts.load(where)
    yield where
    fonts.load()


@pytest.mark.parametrize("weight", [400, 500, 600, 700])
def test_every_weight_is_a_cut_of_its_own(cuts, weight):
    font = base_font(20)
    font.setWeight(QFont.Weight(weight))
    raw = QRawFont.fromFont(font)
    names = {400: "Regular", 500: "Medium", 600: "SemiBold", 700: "Bold"}
    assert (raw.familyName(), raw.styleName()) == ("Vollkorn", names[weight])


def test_bold_and_italic_of_a_document_are_cuts(cuts):
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


def test_a_cut_is_made_whole(tmp_path, qapp):
    path = fonts.make_cut((fonts.ITALIC, 600), tmp_path / "new")
    assert [file.name for file in path.parent.iterdir()] == ["Vollkorn-Italic-600.ttf"]
    raw = QRawFont(str(path), 20)
    assert (raw.familyName(), raw.styleName()) == ("Vollkorn", "SemiBold Italic")


def test_nothing_is_cut_twice(cuts):
    assert fonts.missing(cuts) == []
    (cuts / "Vollkorn-500.ttf").rename(cuts / "away")
    assert fonts.missing(cuts) == [(fonts.UPRIGHT, 500)]
    (cuts / "away").rename(cuts / "Vollkorn-500.ttf")


def test_without_cuts_the_variable_fonts_serve(tmp_path, qapp, cuts):
    assert fonts.load(tmp_path / "nothing here") is False
    assert QRawFont.fromFont(base_font(20)).familyName().startswith("Vollkorn")
    assert fonts.load(cuts) is True


def glyphs(text, font):
    layout = QTextLayout(text, font)
    layout.beginLayout()
    layout.createLine()
    layout.endLayout()
    return [index for run in layout.glyphRuns() for index in run.glyphIndexes()]


def test_figures_are_lining(cuts):
    plain = QFont("Vollkorn")
    old = QFont("Vollkorn")
    old.setFeature(QFont.Tag("onum"), 1)
    lining = base_font(plain.pointSizeF())
    assert glyphs("1911", lining) != glyphs("1911", old)


def test_widgets_inherit_lining_figures(look, qtbot):
    label = QLabel("1911")
    qtbot.addWidget(label)
    assert QFont.Tag("lnum") in label.font().featureTags()


def test_roles_have_the_sizes_of_the_palette(look):
    # type.px of the design
    listed = {
        "card_leaf_title": 38,
        "leaf_title": 30,
        "section_title": 24,
        "shorthand_line": 23,
        "spine": 19,
        "section_label": 16,
        "body": 16.5,
        "table": 16,
        "list": 15.5,
        "bar_and_tabs": 15.5,
        "label": 14.5,
        "caption": 13.5,
    }
    for role, size in listed.items():
        assert type_sizes()[role] == size
        ratio = load("day", 1.5).font(role).pointSizeF() / look.theme.font(role).pointSizeF()
        assert ratio == pytest.approx(1.5)


def test_an_unknown_role_is_refused(look):
    with pytest.raises(KeyError):
        look.theme.font("shouting")


def test_scale_is_bounded_and_unknown_names_give_day():
    assert load("day", 9).scale == 2
    assert load("day", 0.1).scale == 1
    assert load("midnight").name == "day"


def test_a_change_is_told_once_and_dresses_the_application(look, qtbot, qapp):
    button = QPushButton("Print")
    qtbot.addWidget(button)
    with qtbot.waitSignal(look.changed):
        look.set_name("lamp")
    assert look.theme.lamp
    assert qapp.palette().text().color() == look.theme["ink"]
    assert button.grab().toImage().pixelColor(button.width() // 2, 4) == look.theme["slip"]
    before = button.sizeHint().height()
    look.set_scale(2)
    assert button.sizeHint().height() > before * 1.6


def test_a_look_without_an_application_theme_is_day():
    assert Look().theme.name == "day"


def test_colours_of_the_owner(look):
    assert look.theme.spine_fill("spineM") == look.theme["spineM"]
    assert look.theme.spine_fill("#336699").name() == "#336699"
    assert look.theme.spine_fill("no colour at all") == look.theme["cover"]
    dim = theme.load("lamp").spine_fill("#99ccff")
    assert dim.lightnessF() < 0.25


def test_every_colour_of_one_theme_is_in_the_other():
    assert load("day").colours.keys() == load("lamp").colours.keys()
