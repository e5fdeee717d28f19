"""Fields of a card leaf: kept, found, undone, ticked."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from binder.errors import CanMend
from binder.page.lines import TICK
from binder.study.leaves import fields
from binder.study.leaves.fields import KEYWORDS, KEYWORDS_REVERSED, QUESTIONS
from tests.study.found import uids_found


@pytest.fixture
def star(course_shelf):
    return course_shelf.card_leaf("major-17")


def test_a_field_is_written_changed_and_taken_away(star):
    fields.write_field(*star, KEYWORDS, "hope, *rest*\n")
    fields.write_field(*star, QUESTIONS, "Who pours?")
    assert fields.fields(*star) == {KEYWORDS: "hope, *rest*", QUESTIONS: "Who pours?"}
    fields.write_field(*star, KEYWORDS, "hope")
    fields.write_field(*star, QUESTIONS, " \n ")
    assert fields.fields(*star) == {KEYWORDS: "hope"}


def test_savings_of_one_sitting_are_undone_together(course_shelf, star):
    fields.write_field(*star, KEYWORDS, "hope")
    for said in ("hope, r", "hope, rest", ""):
        fields.write_field(*star, KEYWORDS, said, sitting="sitting")
    course_shelf.undo()
    assert fields.fields(*star) == {KEYWORDS: "hope"}
    course_shelf.redo()
    assert fields.fields(*star) == {}


def test_what_is_said_already_makes_no_step(course_shelf, star):
    fields.write_field(*star, KEYWORDS, "hope")
    fields.write_field(*star, KEYWORDS, "hope ")
    course_shelf.undo()
    assert fields.fields(*star) == {}


def test_fields_are_found_at_once(course_shelf, star):
    fields.write_field(*star, KEYWORDS_REVERSED, "an extinguished lantern")
    assert uids_found(course_shelf, "extinguished") == [star[1]]


def test_no_other_fields(star):
    with pytest.raises(CanMend, match="no field “mood”"):
        fields.write_field(*star, "mood", "calm")
    with pytest.raises(CanMend, match="no longer"):
        fields.write_field(star[0], "gone", KEYWORDS, "hope")


def test_each_plain_line_is_a_question_with_a_box():
    said = "Who pours?\n- [x] Why two jugs?\n\n## Later\n* Is it night?\n  more\n3. Third"
    shown = "- [ ] Who pours?\n- [x] Why two jugs?\n\n## Later\n* Is it night?\n  more\n3. Third"
    assert fields.as_questions(said) == shown
    assert fields.open_count(said) == 1
    assert (
        fields.as_questions("Who?\n\nWhy?\n\n- [x] When?") == "- [ ] Who?\n- [ ] Why?\n- [x] When?"
    )
    assert fields.as_questions("```\ncode\n```") == "```\ncode\n```"


def test_a_question_is_settled_and_opened_again(star):
    fields.write_field(*star, QUESTIONS, "Who pours?\nWhy two jugs?")
    fields.tick_question(*star, 1)
    assert fields.fields(*star)[QUESTIONS] == "- [ ] Who pours?\n- [x] Why two jugs?"
    fields.tick_question(*star, 1)
    assert fields.fields(*star)[QUESTIONS] == "- [ ] Who pours?\n- [ ] Why two jugs?"


@example("\r\x85")
@given(st.text(max_size=200))
def test_boxes_are_put_once(text):
    shown = fields.as_questions(text)
    assert fields.as_questions(shown) == shown
    for line in shown.splitlines():
        assert not line.startswith("- [ ] ") or TICK.match(line)
