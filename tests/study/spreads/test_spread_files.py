"""Spreads as files: what is written is read back, and nothing else is."""

import contextlib
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.spreads import SPREADS, Place, Spread, spread
from binder.errors import CanMend
from binder.study.spreads.spread_checks import check
from binder.study.spreads.spread_files import LARGEST, SUFFIX, opened, save, written

ROADS = Spread("two-roads", "Two roads", "", (Place(1, "Here", "Where?", 0, 0),))


@pytest.mark.parametrize("known", SPREADS, ids=lambda known: known.key)
def test_what_was_saved_is_opened_equal(known, tmp_path):
    path = save(known, tmp_path / known.key)
    assert path.name == known.key + SUFFIX
    assert opened(path) == known


def test_a_name_with_its_suffix_keeps_it(tmp_path):
    assert save(ROADS, tmp_path / "mine.spread.json").name == "mine.spread.json"
    assert save(ROADS, tmp_path / "v1.2").name == "v1.2.spread.json"


def test_a_place_that_cannot_be_written_is_said(tmp_path):
    with pytest.raises(CanMend, match="could not be written"):
        save(ROADS, tmp_path / "nowhere" / "x")
    with pytest.raises(CanMend, match="could not be read"):
        opened(tmp_path / "nowhere.spread.json")


def whole(**changed):
    values = json.loads(written(ROADS))
    values["spread"].update(changed)
    return values


PLACE = {"n": 1, "label": "Here", "x": 0, "y": 0}

BAD = [
    ("", "no spread saved by Ringbound"),
    ("<script>alert(1)</script>", "no spread saved by Ringbound"),
    ('{"kind": "ringbound spread", "version": 1, "spr', "cut short"),
    (b"\xff\xfe\x00", "no spread saved"),
    ("[" * 100_000, "no spread saved"),
    ("[]", "no spread saved"),
    ({"kind": "song"}, "no spread saved"),
    ({"kind": "ringbound spread", "version": 2}, "newer Ringbound"),
    ({"kind": "ringbound spread", "version": 1}, "no spread in it"),
    ({**whole(), "script": "alert(1)"}, "it holds “script”"),
    (whole(onload="alert(1)"), "it holds “onload”"),
    (whole(places=[PLACE | {"href": "javascript:alert(1)"}]), "it holds “href”"),
    (whole(places=[PLACE | {"label": "<script>alert(1)</script>"}]), "label of place 1 is to be"),
    (whole(places=[PLACE | {"asks": "<b onclick=x>"}]), "question of place 1 is to be plain"),
    (whole(places=[PLACE | {"asks": {"a": 1}}]), "under “asks” is to be plain words"),
    (whole(source=["x"]), "under “source” is to be plain words"),
    (whole(name="<style>*{}"), "name of a spread is to be plain words"),
    (whole(name=7), "needs a name"),
    (whole(places=[]), "no places yet"),
    (whole(places="x"), "no places yet"),
    (whole(places=[7]), "needs a number, a label"),
    (whole(places=[PLACE, PLACE]), "two places numbered 1"),
    (whole(places=[PLACE, PLACE | {"n": 2}]), "lie exactly on each other"),
    (whole(places=[PLACE, PLACE | {"n": 2, "x": 0.2}]), "lie on each other"),
    (whole(places=[PLACE | {"x": 1e9}]), "too far out"),
    ('{"kind": "ringbound spread", "version": 1, "version": 1, "spread": {}}', "no spread saved"),
    (json.dumps(whole(places=[PLACE | {"x": float("nan")}])), "no spread saved"),
    (" " * (LARGEST + 1), "far too large"),
]


@pytest.mark.parametrize(("content", "sentence"), BAD, ids=lambda it: str(it)[:40])
def test_odd_content_is_one_sentence(tmp_path, content, sentence):
    path = tmp_path / "odd.spread.json"
    if isinstance(content, dict):
        content = json.dumps(content)
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    with pytest.raises(CanMend, match=sentence) as error:
        opened(path)
    assert str(error.value).startswith("“odd.spread.json” ")
    assert "\n" not in str(error.value)


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=12),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=6), inner),
    max_leaves=8,
)
ROW = st.fixed_dictionaries({}, optional=dict.fromkeys(PLACE, JSON) | {"asks": JSON})


@given(st.fixed_dictionaries({"places": st.lists(ROW, max_size=3), "name": JSON, "source": JSON}))
def test_any_json_is_a_spread_or_one_sentence(tmp_path_factory, values):
    path = tmp_path_factory.getbasetemp() / "any.spread.json"
    path.write_text(json.dumps(whole(**values)), encoding="utf-8")
    with contextlib.suppress(CanMend):
        assert check(opened(path)).places


def test_the_file_can_be_read_by_eye():
    assert '"label": "Crosses it"' in written(spread("celtic-cross"))
