"""Earlier own words are packed: read whole again, undone, taken back, and small in the file."""

from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.errors import OwnFault
from binder.store.file import create
from binder.store.schema import OwnWords
from binder.study.cards import words
from binder.study.leaves import leaves, tabs
from binder.study.overview import moving
from binder.study.overview.progress import progress
from tests.profiles import fewer

DAY = "2026-03-{:02}T20:00:00"


@pytest.fixture
def star(course_shelf):
    return course_shelf.card_leaf("major-17")


def rows(star):
    """Way, text and whether it is packed, as they stand in the file."""
    query = OwnWords.select(OwnWords.text, OwnWords.packed).order_by(OwnWords.id).tuples()
    return [(text, packed is not None) for text, packed in star[0].all(query)]


def told(star):
    return [one.text for one in words.history(*star)]


def write(star, *texts, way="upright"):
    for day, text in enumerate(texts, start=1):
        words.write_words(*star, way, text, at=DAY.format(day))


def test_only_the_latest_keeps_its_text(star):
    write(star, "Hope.", "Hope run thin.", "Clear weather.")
    assert rows(star) == [("", True), ("", True), ("Clear weather.", False)]
    assert told(star) == ["Hope.", "Hope run thin.", "Clear weather."]
    assert words.standing(*star) == words.Standing(words.current(words.history(*star)), 2)


def test_each_way_has_a_chain_of_its_own(star):
    write(star, "Hope.", "Hope, still.")
    write(star, "Doubt.", "Doubt, still.", way="reversed")
    write(star, "Hope, still, and rest.")
    ways = [(one.way, one.text) for one in words.history(*star)]
    assert [text for way, text in ways if way == "reversed"] == ["Doubt.", "Doubt, still."]
    assert [text for way, text in ways if way == "upright"][-1] == "Hope, still, and rest."


def test_undo_unpacks_and_redo_packs_again(star):
    write(star, "Hope.", "Clear weather.")
    star[0].gate.undo()
    assert rows(star) == [("Hope.", False)]
    star[0].gate.redo()
    assert (rows(star)[0], told(star)) == (("", True), ["Hope.", "Clear weather."])


def test_a_sitting_taken_back_leaves_the_one_before_whole(star):
    write(star, "Hope.", "Hope run thin.")
    uid = words.write_words(*star, "upright", "Nothing")
    assert words.write_words(*star, "upright", "Hope run thin.", sitting=uid) == ""
    assert rows(star) == [("", True), ("Hope run thin.", False)]
    star[0].gate.undo()
    assert told(star) == ["Hope.", "Hope run thin.", "Nothing"]


def test_words_written_between_are_not_written_over(star):
    mine = words.write_words(*star, "upright", "Mine.", at=DAY.format(1))
    words.write_words(*star, "upright", "Of another window.", at=DAY.format(1))
    assert words.write_words(*star, "upright", "Mine again.", sitting=mine) not in ("", mine)
    assert told(star) == ["Mine.", "Of another window.", "Mine again."]


def test_a_clock_set_back_hides_nothing(star):
    words.write_words(*star, "upright", "Late.", at="2026-12-01T10:00:00")
    words.write_words(*star, "upright", "Written after the clock was set back.", at=DAY.format(1))
    now = words.standing(*star).now["upright"]
    assert (now.text[:7], now.at) == ("Written", "2026-12-01T10:00:00")


def test_rows_from_before_packing_are_read_and_joined(star):
    binder, uid = star
    row = words.Leaf.select(words.Leaf.id).where(words.Leaf.uid == uid)
    with binder.change("As older files have it") as change:
        for day, text in ((1, "One."), (2, "Two."), (3, "Three.")):
            change.add(
                OwnWords, leaf=binder.value(row), card="major-17", way="upright", text=text,
                at=DAY.format(day),
            )  # fmt: skip
    assert (told(star), words.standing(*star).earlier) == (["One.", "Two.", "Three."], 2)
    words.write_words(*star, "upright", "Four.")
    assert told(star) == ["One.", "Two.", "Three.", "Four."]
    assert rows(star)[2:] == [("", True), ("Four.", False)]


def test_erased_words_count_as_none(course_shelf, star):
    write(star, "Hope.", "")
    assert "major-17" not in progress(course_shelf)
    assert words.cards_with_words(course_shelf) == set()
    assert words.standing(*star) == words.Standing({}, 1)
    write(star, "Hope.")
    assert words.standing(*star).earlier == 1


def test_they_go_along_to_another_binder(star, tmp_path):
    write(star, "Hope.", "Clear weather.")
    other = create(tmp_path / "Other.ringbound", "Other", "spineF")
    target = tabs.tab(other, tabs.add_tab(other, "Kept", "plain"))
    moving.move_to_binder(*star, other, target)
    assert told((other, star[1])) == ["Hope.", "Clear weather."]
    other.close()


def test_damaged_words_are_said_to_be_so(star):
    write(star, "Hope.", "Clear weather.")
    star[0].db.execute_sql("UPDATE own_words SET packed = x'7778' WHERE packed IS NOT NULL")
    with pytest.raises(OwnFault, match="cannot be read"):
        words.history(*star)
    assert words.standing(*star).now["upright"].text == "Clear weather."


def test_many_versions_cost_little_more_than_what_changed(star):
    said, changed = [f"word{n % 611} of {n % 97}" for n in range(300)], 0
    for n in range(200):
        words.write_words(*star, "upright", ". ".join(said))
        said[n * 31 % 300] = new = f"In week {n} the {n * 7919 % 1009}th thing I saw was a jug"
        changed += len(new)
    sizes = star[0].sql("SELECT length(packed) FROM own_words WHERE packed IS NOT NULL ORDER BY id")
    assert len(sizes) == 199
    assert sum(size for (size,) in sizes[1:]) <= 1.3 * changed


SAID = ["", "Hope.", "Hope run thin.", "Clear weather after damage.", "Clear weather, hope."]
WRITINGS = st.lists(
    st.tuples(st.sampled_from(("upright", "reversed")), st.sampled_from(SAID), st.booleans()),
    max_size=14,
)


@given(WRITINGS)
@fewer(3)
def test_whatever_is_written_is_read_as_if_nothing_were_packed(writings):
    with TemporaryDirectory() as folder:
        binder = create(Path(folder) / "A.ringbound", "A", "spineF")
        tab = tabs.tab(binder, tabs.add_tab(binder, "Majors", "majors"))
        uid = leaves.add_leaf(binder, tab, "The Star", kind="card", card="major-17")
        plain, sittings = {"upright": [], "reversed": []}, {"upright": "", "reversed": ""}
        for way, text, goes_on in writings:
            sitting = sittings[way] if goes_on else ""
            if sitting:
                plain[way].pop()
            if text != (plain[way][-1] if plain[way] else ""):
                plain[way].append(text)
            sittings[way] = words.write_words(binder, uid, way, text, sitting=sitting)
            found = words.history(binder, uid)
            for each, texts in plain.items():
                assert [one.text for one in found if one.way == each] == texts
            assert words.standing(binder, uid).now == words.current(found)
        while binder.gate.undo_label() == "Write own words":
            binder.gate.undo()
        assert words.history(binder, uid) == []
        binder.close()
