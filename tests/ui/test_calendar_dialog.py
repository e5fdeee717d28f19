"""Saving due days as a calendar file from the window's menu."""

import pytest
from icalendar import Calendar

from ui.desk.calendar_dialog import QUIET, TOLD, CalendarDialog


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
