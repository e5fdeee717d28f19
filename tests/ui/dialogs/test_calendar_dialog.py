"""Saving due days as a calendar file from the window's menu."""

import pytest
from icalendar import Calendar

from binder.study.leaves import leaves, tabs
from binder.study.readings import lookbacks
from ui.dialogs.calendar_dialog import QUIET, TOLD, CalendarDialog


@pytest.fixture
def dialog(qtbot, session, look):
    made = CalendarDialog(session, look)
    qtbot.addWidget(made)
    made.show()
    return made


def events(path):
    return Calendar.from_ical(path.read_bytes()).walk("VEVENT")


def test_without_asking_no_word_of_the_diary_is_in_it(dialog, tmp_path, session):
    with_sentence = []
    session.said.connect(with_sentence.append)
    assert not dialog.with_words.isChecked()
    dialog.save_to(tmp_path / "due")
    found = events(tmp_path / "due.ics")
    assert len(found) > 2
    assert "Ferry" not in (tmp_path / "due.ics").read_text(encoding="utf-8")
    assert with_sentence == [f"Saved {len(found)} entries as {tmp_path / 'due.ics'}."]


def test_with_words_is_warned_of_and_written(dialog, tmp_path):
    assert dialog.told.text() == QUIET
    dialog.with_words.click()
    assert dialog.told.text() == TOLD
    dialog.save_to(tmp_path / "due.ics")
    assert any("Ferry" in str(event["summary"]) for event in events(tmp_path / "due.ics"))


def test_a_folder_that_is_not_there_is_said(dialog, tmp_path):
    dialog.save_to(tmp_path / "none" / "due.ics")
    assert dialog.isVisible()
    assert "due.ics" in dialog.wrong.text()


def test_what_is_left_out_can_only_be_chosen_where_words_go_in(dialog):
    boxes = (dialog.no_querents, dialog.no_private)
    assert not any(box.isEnabled() for box in boxes)
    dialog.with_words.click()
    assert all(box.isEnabled() for box in boxes)


def test_private_words_are_left_out_when_asked(dialog, session, tmp_path):
    binder = session.shelf.binder("Practice")
    log = tabs.first_of_kind(binder, "readings")
    uid = leaves.contents(binder, log)[0].uid
    lookbacks.expect(binder, uid, "Private: the gate sticks.", 50, "2026-12-24")
    dialog.with_words.click()
    for out, found in ((tmp_path / "all.ics", True), (tmp_path / "some.ics", False)):
        dialog.save_to(out)
        assert ("the gate sticks" in out.read_text(encoding="utf-8")) is found
        dialog.no_private.setChecked(True)
