"""Names and private words are taken out of what leaves the binder."""

from dataclasses import replace

import pytest

from binder.cards.spreads import spread
from binder.study.leaves import tabs
from binder.study.readings import lookbacks, readings
from binder.study.readings.discretion import Discretion, LeaveOut
from binder.study.readings.readings import Laid, NewReading

ONE = NewReading("2026-11-22T19:30", "What now?", spread("one-card"), [Laid(1, "cups-13")])


@pytest.fixture
def told(course_shelf):
    """A verb: for whom was read, and what to say -> what is said with querents left out."""
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "readings")

    def said(querent, words):
        readings.log(binder, tab, replace(ONE, querent=querent))
        return Discretion(course_shelf, LeaveOut(querents=True)).text(words)

    return said


@pytest.mark.parametrize(
    ("querent", "words", "left"),
    [
        ("M.", "Then M. asked; at 5 P.M. she left.", "Then the querent asked; at 5 P.M. she left."),
        ("M.", "M. asked.\n\n- M.’s kiln", "The querent asked.\n\n- The querent’s kiln"),
        ("M", "I saw M today, with M’s son.", "I saw the querent today, with the querent’s son."),
        ("A", "A day with A. was long.", "A day with the querent was long."),
        ("M. K.", "For M. K., or M.K.: rest.", "For the querent, or the querent: rest."),
        ("MK", "So MK said. MKS did not.", "So the querent said. MKS did not."),
        (
            "Ada Quillfeather",
            "Ada Quillfeather came. Her son said Ada was QUILLFEATHER enough. Adam too.",
            "The querent came. Her son said the querent was the querent enough. Adam too.",
        ),
        ("Quillfeather, Ada;", "Ada and Quillfeather.", "The querent and the querent."),
        ("Ada van der Quill", "The van of Ada.", "The van of the querent."),
        ("my sister", "What my sister asked.", "What the querent asked."),
        ("Zoé", "With Zoe\u0301 at noon.", "With the querent at noon."),
        ("self", "To thine own self be true.", "To thine own self be true."),
        ("", "I asked.", "I asked."),
    ],
)
def test_whoever_was_read_for_is_not_named(told, querent, words, left):
    assert told(querent, words) == left


def test_a_reading_is_shown_without_what_is_kept_back(course_shelf):
    binder = course_shelf.binder("Practice")
    made = replace(
        ONE, question="What of Ada Quillfeather?", querent="Ada Quillfeather", topic="Ada’s kiln",
        mood="Private: cross", venue="with Ada", laid=[Laid(1, "cups-13", note="Ada laughed.")],
    )  # fmt: skip
    uid = readings.log(binder, tabs.first_of_kind(binder, "readings"), made)
    lookbacks.expect(binder, uid, "Private: it ends.", 60, "2026-12-20")
    lookbacks.expect(binder, uid, "Ada comes again.", 60, "2026-12-20")
    lookbacks.look_back(binder, uid, "Ada came.")
    whole = readings.reading(binder, uid)
    kept = Discretion(course_shelf, LeaveOut(querents=True, private=True)).reading(whole)
    assert (kept.question, kept.querent) == ("What of the querent?", "")
    assert (kept.topic, kept.mood, kept.venue) == ("The querent’s kiln", "", "with the querent")
    assert [one.note for one in kept.laid] == ["The querent laughed."]
    assert [one.text for one in kept.expectations] == ["The querent comes again."]
    assert [one.text for one in kept.look_backs] == ["The querent came."]
    assert Discretion(course_shelf).reading(whole) == whole
    hidden = replace(whole, question="Private: mine", querent="B.")
    kept = Discretion(course_shelf, LeaveOut(private=True)).reading(hidden)
    assert (kept.question, kept.querent) == ("A private leaf", "B.")


def test_nothing_is_left_out_unasked(course_shelf):
    words = "Private: M. said so."
    assert Discretion(course_shelf).text(words) == Discretion(course_shelf).line(words) == words
    assert not Discretion(course_shelf).withheld("Private: mine")
    assert LeaveOut().words() == ""


def test_private_titles_and_lines(course_shelf):
    kept = Discretion(course_shelf, LeaveOut(private=True))
    assert kept.withheld("Private: mine")
    assert kept.line("Private: mine") == ""
    assert kept.title("Private: mine") == "A private leaf"
    assert kept.title("") == ""
    assert LeaveOut(True, True).words() == "Querents and private passages are left out."
    assert LeaveOut(private=True).words() == "Private passages are left out."
