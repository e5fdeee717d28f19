"""Contrast of both themes, computed with the formulas of WCAG 2.2 written out here.

Source: Web Content Accessibility Guidelines 2.2, W3C Recommendation of 5 October 2023,
https://www.w3.org/TR/WCAG22/ : definitions of 'relative luminance' and 'contrast ratio';
success criterion 1.4.6 asks 7:1 of text, 1.4.11 asks 3:1 of parts of controls and graphics.
"""

import tomllib
from pathlib import Path

import pytest

PALETTE = tomllib.loads(
    (Path(__file__).parents[2] / "resources" / "palette.toml").read_text(encoding="utf-8")
)
THEMES = ("day", "lamp")
DECORATION = {
    "day": {"ring_on_paper"},
    "lamp": {"ringlo_on_paper", "cover_on_paper", "cover_on_desk"},
}
"""Shapes that carry no meaning, or have an outline that does; named so in the palette."""


def luminance(hexes):
    """L = 0.2126 R + 0.7152 G + 0.0722 B, each from its sRGB value as the definition says."""
    linear = []
    for at in (1, 3, 5):
        value = int(hexes[at : at + 2], 16) / 255
        linear.append(value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4)
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def ratio(one, other):
    """(L1 + 0.05) / (L2 + 0.05), L1 that of the lighter colour."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def pairs(theme, table):
    colours = PALETTE[theme]["colours"] | {"paper_lit": PALETTE[theme]["colours"]["paperlit"]}
    for name, listed in PALETTE[theme][table].items():
        one, other = name.split("_on_")
        yield name, ratio(colours[one], colours[other]), listed


def test_formula_gives_the_published_extremes():
    # WCAG 2.2, 'contrast ratio': ratios range from 1 to 21
    assert ratio("#FFFFFF", "#000000") == pytest.approx(21)
    assert ratio("#777777", "#777777") == 1


def test_formula_gives_a_published_pair():
    # W3C, Understanding SC 1.4.3: #767676 on white is the lightest grey that passes 4.5:1
    assert ratio("#767676", "#FFFFFF") >= 4.5
    assert ratio("#777777", "#FFFFFF") < 4.5


@pytest.mark.parametrize("theme", THEMES)
def test_text_is_seven_to_one(theme):
    for name, found, listed in pairs(theme, "contrast_text"):
        assert found >= 7, (theme, name, found)
        assert found == pytest.approx(listed, abs=0.006), (theme, name)


@pytest.mark.parametrize("theme", THEMES)
def test_shapes_with_a_meaning_are_three_to_one(theme):
    for name, found, listed in pairs(theme, "contrast_shapes"):
        assert found == pytest.approx(listed, abs=0.006), (theme, name)
        if name not in DECORATION[theme]:
            assert found >= 3, (theme, name, found)


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("ground", ["bar", "slip", "paper", "paperlit"])
def test_edges_of_controls_and_the_focus_ring_stand_out(theme, ground, qapp):
    from ui.look.theme import load

    colours = load(theme).hexes()
    assert ratio(colours["line"], colours[ground]) >= 3
    assert ratio(colours["own"], colours[ground]) >= 3


@pytest.mark.parametrize("theme", THEMES)
def test_one_of_the_two_tones_of_the_focus_ring_stands_out_on_any_spine(theme):
    colours = PALETTE[theme]["colours"]
    assert ratio(colours["own"], colours["paper"]) >= 3
    for spine in ("spineF", "spineP", "spineM", "cover"):
        assert max(ratio(colours[tone], colours[spine]) for tone in ("own", "paper")) >= 3


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize(
    "colour", ["#ff0000", "#00ff00", "#0000ff", "#000000", "#ffffff", "#405060", "#8c2019", "#888"]
)
def test_words_can_be_read_on_a_tab_of_any_colour(theme, colour, qapp):
    from ui.look.theme import load

    made = load(theme)
    assert ratio(made["ink"].name(), made.tab_fill(colour).name()) >= 7
    # words of a chosen line, of a disabled entry, of a dark button
    assert ratio(made["paper"].name(), made["own"].name()) >= 7
    assert ratio(made["inksoft"].name(), made["slip"].name()) >= 7
    assert ratio(made["paper"].name(), made["ink"].name()) >= 7


def test_the_program_counts_as_the_formula_does(qapp):
    from PySide6.QtGui import QColor

    from ui.look.colour import contrast

    for one, other in (("#23211D", "#F8F2E4"), ("#E39A6E", "#4A352A"), ("#000000", "#0a0a0a")):
        assert contrast(QColor(one), QColor(other)) == pytest.approx(ratio(one, other), abs=0.001)
