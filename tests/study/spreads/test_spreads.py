"""The library of spreads: the program's own and the owner's."""

from dataclasses import replace

import pytest

from binder.cards.spreads import SPREADS, Place, Spread, spread
from binder.errors import CanMend
from binder.store.schema import OwnSpread
from binder.study.leaves import tabs
from binder.study.readings import readings
from binder.study.readings.readings import Laid, NewReading
from binder.study.spreads import spreads

ROADS = Spread(
    "", "Two roads", "common practice",
    (Place(1, "Here", "Where do I stand?", 0, 0), Place(2, "Left", "", -1, 1),
     Place(3, "Right", "", 1, 1)),
)  # fmt: skip


@pytest.fixture
def binders(course_shelf):
    return course_shelf.binder("Foundations"), course_shelf.binder("Practice")


def own(shelf, **options):
    return [view for view in spreads.library(shelf, **options) if view.own]


def test_the_programs_spreads_come_first_and_own_ones_by_name(course_shelf, binders):
    spreads.add_spread(course_shelf, binders[0], replace(ROADS, name="Zigzag"))
    spreads.add_spread(course_shelf, binders[1], ROADS)
    names = [each.name for each in spreads.spreads(course_shelf)]
    assert names == [*(known.name for known in SPREADS), "Two roads", "Zigzag"]


def test_an_own_spread_is_found_by_key_name_and_uid(course_shelf, binders):
    uid = spreads.add_spread(course_shelf, binders[0], ROADS)
    found = spreads.spread_called(course_shelf, "two-roads")
    assert found == replace(ROADS, key="two-roads")
    assert spreads.spread_called(course_shelf, "TWO roads") == found
    assert spreads.spread_called(course_shelf, uid) == found
    assert spreads.spread_called(course_shelf, "celtic-cross") == spread("celtic-cross")
    with pytest.raises(CanMend, match=r"no spread called pyramid; choose one of .*two-roads"):
        spreads.spread_called(course_shelf, "pyramid")


def test_keys_are_free_whatever_the_name(course_shelf, binders):
    for name in ("One card!", "Zwei Wege für Übermut", "两条路", "***"):
        spreads.add_spread(course_shelf, binders[0], replace(ROADS, name=name))
    keys = [view.spread.key for view in own(course_shelf)]
    assert sorted(keys) == sorted(["one-card-2", "zwei-wege-fur-ubermut", "两条路", "spread"])


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        ({"name": " "}, "needs a name"),
        ({"name": "celtic CROSS"}, "already; choose another name"),
        ({"name": "x" * 81}, "more than 80 letters"),
        ({"name": "<script>alert(1)</script>"}, "plain words"),
        ({"places": ()}, "no places yet"),
        ({"places": (*ROADS.places, Place(4, "Upon", "", 0, 0))}, "Places 1 and 4 lie on each"),
        ({"places": (*ROADS.places, Place(4, "Upon", "", 0.25, 0.25))}, "1 and 4 lie on each"),
        ({"places": (*ROADS.places, Place(4, "Upon", "", 0, 0, 180))}, "1 and 4 lie on each"),
        ({"places": (Place(1, " ", "", 0, 0),)}, "label of place 1 is empty"),
        ({"places": (Place(1, "Here", "<img src=x>", 0, 0),)}, "question of place 1 .* plain"),
        ({"places": (Place(1, "He\x07re", "", 0, 0),)}, "plain words"),
        ({"places": tuple(Place(n, "x", "", n, 0) for n in range(1, 80))}, "only 78 cards"),
        (
            {"places": tuple(Place(n, "x", "", 0, 0, 60 * n) for n in (1, 2, 3))},
            "Places 1 and 3 lie on each",
        ),
    ],
)
def test_a_spread_that_cannot_be_laid_says_why_and_is_not_written(
    course_shelf, binders, changed, sentence
):
    uid = spreads.add_spread(course_shelf, binders[0], ROADS)
    with pytest.raises(CanMend, match=sentence):
        spreads.add_spread(course_shelf, binders[0], replace(ROADS, name="Mine", **changed)
                           if "name" not in changed else replace(ROADS, **changed))  # fmt: skip
    with pytest.raises(CanMend, match=sentence):
        spreads.change_spread(course_shelf, binders[0], uid, replace(ROADS, **changed))
    assert [view.spread.places for view in own(course_shelf)] == [ROADS.places]


def test_a_card_across_another_is_no_fault(course_shelf, binders):
    crossed = replace(ROADS, places=(*ROADS.places, Place(4, "Across", "", 0, 0, 90)))
    spreads.add_spread(course_shelf, binders[0], crossed)
    for known in SPREADS:
        spreads.duplicate(course_shelf, binders[0], known)


def test_a_later_edit_changes_no_old_reading(course_shelf, binders):
    binder = binders[1]
    uid = spreads.add_spread(course_shelf, binder, ROADS)
    before = own(course_shelf)[0].spread
    laid = [Laid(1, "cups-02"), Laid(2, "cups-03"), Laid(3, "cups-04")]
    log = tabs.first_of_kind(binder, "readings")
    leaf = readings.log(binder, log, NewReading("2026-11-22T19:30", "Which?", before, laid))
    spreads.change_spread(course_shelf, binder, uid, replace(ROADS, places=ROADS.places[:1]))
    assert readings.reading(binder, leaf).spread == before
    assert len(own(course_shelf)[0].spread.places) == 1
    assert spreads.uses(course_shelf) == {"two-roads": 1}


def test_renamed_it_keeps_its_key(course_shelf, binders):
    uid = spreads.add_spread(course_shelf, binders[0], ROADS)
    spreads.rename(course_shelf, binders[1], uid, " The fork ")
    assert [(v.spread.key, v.spread.name) for v in own(course_shelf)] == [("two-roads", "The fork")]
    binders[1].gate.undo()
    assert own(course_shelf)[0].spread.name == "Two roads"


def test_duplicates_have_names_of_their_own(course_shelf, binders):
    for _ in range(3):
        spreads.duplicate(course_shelf, binders[0], spread("horseshoe"))
    names = [view.spread.name for view in own(course_shelf)]
    assert names == ["Horseshoe, copy", "Horseshoe, copy 2", "Horseshoe, copy 3"]
    assert own(course_shelf)[0].spread.places == spread("horseshoe").places


def test_a_retired_spread_is_kept_and_comes_back(course_shelf, binders):
    uid = spreads.add_spread(course_shelf, binders[0], ROADS)
    spreads.retire(course_shelf, binders[1], uid)
    assert own(course_shelf) == []
    assert [view.spread.name for view in own(course_shelf, retired=True)] == ["Two roads"]
    with pytest.raises(CanMend, match="among the retired ones"):
        spreads.add_spread(course_shelf, binders[0], ROADS)
    spreads.bring_back(course_shelf, binders[0], uid)
    assert [view.spread.name for view in own(course_shelf)] == ["Two roads"]


def test_nothing_is_written_when_nothing_changed(course_shelf, binders):
    uid = spreads.add_spread(course_shelf, binders[0], ROADS)
    told = []
    course_shelf.listen(told.append)
    spreads.change_spread(course_shelf, binders[0], uid, ROADS)
    assert told == []


def test_a_spread_goes_where_its_binder_goes(course_shelf, binders):
    spreads.add_spread(course_shelf, binders[0], ROADS)
    assert len(binders[0].all(OwnSpread.select())) == 1
    course_shelf.remove(binders[0])
    assert own(course_shelf) == []


def test_a_spread_that_is_gone_is_said(course_shelf, binders):
    with pytest.raises(CanMend, match="no longer on this shelf"):
        spreads.retire(course_shelf, binders[0], "gone")
