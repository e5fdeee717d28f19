"""Themes and letters."""

import pytest
from PySide6.QtGui import QFont, QTextLayout
from PySide6.QtWidgets import QLabel, QPushButton

from ui.look import theme
from ui.look.theme import Look, base_font, load, type_sizes


def glyphs(text, font):
    layout = QTextLayout(text, font)
    layout.beginLayout()
    layout.createLine()
    layout.endLayout()
    return [index for run in layout.glyphRuns() for index in run.glyphIndexes()]


def test_figures_are_lining(look):
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
