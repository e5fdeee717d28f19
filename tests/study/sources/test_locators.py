"""Places in a source, in the words they are cited by."""

import pytest

from binder.study.sources.locators import cited_at, of_anchor


@pytest.mark.parametrize(
    ("written", "cited"),
    [
        ("112", "p. 112"),
        (" 112 ", "p. 112"),
        ("204-205", "pp. 204–205"),
        ("204 – 205", "pp. 204–205"),
        ("12-14-16", "pp. 12–14–16"),
        ("p. 112", "p. 112"),
        ("ch. 3", "ch. 3"),
        ("12-", "12-"),
        ("xii", "xii"),
        ("", ""),
    ],
)
def test_pages_are_called_so_and_other_places_stay(written, cited):
    """One page is p., several are pp. with a dash between: usual in print."""
    assert cited_at(written) == cited


@pytest.mark.parametrize(
    ("anchor", "place"),
    [
        ("p112", "p. 112"),
        ("pp204-205", "pp. 204–205"),
        ("p12-14", "p. 12–14"),
        ("note4", "note 4"),
        ("ch3", "ch 3"),
        ("112", "112"),
        ("end", "end"),
        ("", ""),
    ],
)
def test_the_end_of_a_link_in_words(anchor, place):
    assert of_anchor(anchor) == place
