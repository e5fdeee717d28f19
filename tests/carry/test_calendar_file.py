"""The calendar file, read again by the icalendar library and by dateutil."""

import re
import time
from dataclasses import replace
from datetime import date, datetime, timedelta

import icalendar
import pytest
from dateutil.rrule import rrulestr
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.spreads import spread
from binder.carry import calendar_file
from binder.errors import CanMend
from binder.reckon.calendar import Draw
from binder.study.course import course
from binder.study.leaves import leaves, tabs
from binder.study.overview import agenda
from binder.study.readings import draws, lookbacks, readings
from binder.study.readings.discretion import LeaveOut
from binder.study.readings.readings import Laid, NewReading

TODAY = date(2026, 11, 25)
SECRET = "Should I move the workshop to the ferry quay?"
ONE = NewReading("2026-11-22T23:30", SECRET, spread("one-card"), [Laid(1, "cups-13")])


@pytest.fixture
def practice(course_shelf):
    return course_shelf.binder("Practice")


@pytest.fixture
def log(practice):
    """A verb that logs a reading in Practice."""
    tab = tabs.first_of_kind(practice, "readings")
    return lambda **fields: readings.log(practice, tab, replace(ONE, **fields))


def events(shelf, *, with_words=False, today=TODAY):
    data = calendar_file.calendar(shelf, today, with_words=with_words)
    return icalendar.Calendar.from_ical(data).walk("VEVENT")


def set_zone():
    """Take the zone from the environment, where the system can change it while running."""
    getattr(time, "tzset", lambda: None)()


def found(shelf, title, **how):
    return [each for each in events(shelf, **how) if each["summary"].startswith(title)]


def days(event):
    return event.decoded("dtstart"), event.decoded("dtend")


def test_the_file_is_what_the_standard_asks_for(course_shelf, log):
    """RFC 5545: 3.6 (PRODID and VERSION), 3.6.1 (UID and DTSTAMP), 3.1 (lines of 75 octets that
    end in CRLF), 3.8.2.2 and 3.6.1 (whole days as DATE values, the end not included)."""
    log(look_on="2026-12-22")
    data = calendar_file.calendar(course_shelf, TODAY, with_words=True)
    read = icalendar.Calendar.from_ical(data)
    assert read["version"] == "2.0"
    assert read["prodid"]
    assert data.endswith(b"END:VCALENDAR\r\n")
    assert max(len(line) for line in data.split(b"\r\n")) <= 75
    assert b"\n" not in data.replace(b"\r\n", b"")
    for event in read.walk("VEVENT"):
        first, end = days(event)
        assert type(first) is type(end) is date
        assert end > first
        assert event.decoded("dtstamp").tzinfo is not None
        assert not event.errors
    marks = [str(event["uid"]) for event in read.walk("VEVENT")]
    assert len(set(marks)) == len(marks) > 7


def test_a_due_look_back_is_a_whole_day(course_shelf, log):
    log(look_on="2026-12-22")
    (event,) = found(course_shelf, "Look back")
    assert days(event) == (date(2026, 12, 22), date(2026, 12, 23))
    assert str(event["class"]) == "PRIVATE"
    assert str(event["transp"]) == "TRANSPARENT"


def test_statements_due_on_one_day_are_one_entry(course_shelf, practice, log):
    uid = log(look_on="2026-12-22")
    for text, due in (("It rains.", "2026-12-22"), ("It snows.", "2026-12-22"),
                      ("It thaws.", "2027-01-05")):  # fmt: skip
        lookbacks.expect(practice, uid, text, 70, due)
    first, second = found(course_shelf, "Look back", with_words=True)
    assert str(first["summary"]) == f"Look back: {SECRET}"
    assert str(first["description"]) == "It rains.\nIt snows."
    assert days(second)[0] == date(2027, 1, 5)


def test_units_last_from_their_first_to_their_last_day(course_shelf):
    units = found(course_shelf, "Unit")
    assert [str(event["summary"]) for event in units] == [f"Unit {n}" for n in range(1, 8)]
    assert days(units[0]) == (date(2026, 3, 2), date(2026, 3, 30))
    named = found(course_shelf, "Unit 4", with_words=True)
    assert str(named[0]["summary"]) == "Unit 4: Wands"


def test_a_month_and_its_card(course_shelf, log):
    log(month="2026-12", laid=[Laid(1, "cups-13", reversed=True)])
    (event,) = found(course_shelf, "Card for December")
    assert str(event["summary"]) == "Card for December"
    assert days(event)[0] == date(2026, 12, 1)
    (event,) = found(course_shelf, "Card for December", with_words=True)
    assert str(event["summary"]) == "Card for December: Queen of Cups reversed"


@pytest.mark.parametrize(
    ("draw", "expected"),
    [
        (Draw.MONTH, ["2026-11-30", "2026-12-31", "2027-01-31", "2027-02-28"]),
        (Draw.WEEK, ["2026-11-23", "2026-11-30", "2026-12-07", "2026-12-14"]),
        (Draw.DAY, ["2026-11-25", "2026-11-26", "2026-11-27", "2026-11-28"]),
    ],
)
def test_draws_come_again_as_dateutil_reads_the_rule(course_shelf, draw, expected):
    draws.switch(course_shelf, draw, True)
    (event,) = found(course_shelf, f"Draw the card for the {draw}")
    start = datetime.combine(days(event)[0], datetime.min.time())
    rule = rrulestr(event["rrule"].to_ical().decode(), dtstart=start)
    assert [f"{day:%Y-%m-%d}" for day in rule[:4]] == expected


def test_without_words_nothing_of_the_diary_is_in_the_file(course_shelf, practice, log):
    uid = log(look_on="2026-12-22", month="2026-12", topic="work", querent="M. K.")
    lookbacks.expect(practice, uid, "The lease is signed.", 70, "2026-12-20")
    data = calendar_file.calendar(course_shelf, TODAY).decode()
    said = set(re.findall(r"[A-Za-z]{3,}", " ".join(re.findall(r"SUMMARY:(.*)", data))))
    assert said == {
        "Look",
        "back",
        "Unit",
        "Card",
        "for",
        "December",
        "Draw",
        "the",
        "card",
        "month",
    }
    assert "DESCRIPTION" not in data
    for word in ("workshop", "lease", "Queen", "Cups", "Wands", "M. K.", uid):
        assert word not in data


def test_what_is_left_out_is_not_in_the_file(course_shelf, practice, log):
    """Neither in words nor, where a text was encoded, in any other form: the file is plain text."""
    uid = log(question="Will Ada Quill move?", look_on="2026-12-22", querent="Ada Quill")
    for text in ("Private: secret one.", "Ada signs, then; Quill too."):
        lookbacks.expect(practice, uid, text, 70, "2026-12-22")
    log(question="Private: secret two?", look_on="2026-12-22")
    leave_out = LeaveOut(querents=True, private=True)
    told = calendar_file.calendar(course_shelf, TODAY, with_words=True)
    assert all(word in told for word in (b"secret one", b"secret two", b"Ada", b"Quill"))
    data = calendar_file.calendar(course_shelf, TODAY, with_words=True, leave_out=leave_out)
    unfolded = data.replace(b"\r\n ", b"")
    assert not any(word in unfolded for word in (b"secret", b"Ada", b"Quill"))
    looks = [
        each for each in icalendar.Calendar.from_ical(data).walk("VEVENT")
        if each["summary"].startswith("Look back")
    ]  # fmt: skip
    assert sorted(str(each["summary"]) for each in looks) == [
        "Look back", "Look back: Will the querent move?"
    ]  # fmt: skip
    assert [str(each.get("description", "")) for each in looks if "description" in each] == [
        "The querent signs, then; the querent too."
    ]


def test_uids_stay_when_days_and_words_change(course_shelf, practice, log):
    uid = log(look_on="2026-12-22")
    other = log(question="And then?")
    lookbacks.expect(practice, other, "It rains.", 70, "2026-12-20")
    before = {str(event["uid"]) for event in events(course_shelf)}
    lookbacks.ask_later(practice, uid, date(2027, 1, 10))
    leaves.rename(practice, uid, "Another title")
    course.change_unit(
        course_shelf.binders[0], course.units(course_shelf.binders[0])[0].uid,
        name="First", starts="2026-03-09", ends="2026-04-05",
    )  # fmt: skip
    assert {str(event["uid"]) for event in events(course_shelf)} == before


def test_the_same_shelf_gives_the_same_file(course_shelf, log):
    log(look_on="2026-12-22")
    files = {calendar_file.calendar(course_shelf, TODAY, with_words=w) for w in (True, True)}
    assert len(files) == 1


def test_what_is_done_let_go_or_in_the_drawer_is_not_in_the_file(course_shelf, practice, log):
    done, gone, away = (log(look_on="2026-12-22") for _ in range(3))
    lookbacks.look_back(practice, done, "It did.")
    lookbacks.let_go(practice, gone)
    leaves.set_aside(practice, away)
    assert found(course_shelf, "Look back") == []


def test_clocks_and_zones_between_reading_and_due_day_move_nothing(
    course_shelf, practice, log, monkeypatch
):
    """Read half an hour before midnight in Helsinki on the eve of summer time, due the day the
    clocks go back; then the owner moves across the date line."""
    seen = set()
    try:
        for number, zone in enumerate(("Europe/Helsinki", "Pacific/Auckland", "Pacific/Honolulu")):
            monkeypatch.setenv("TZ", zone)
            set_zone()
            if not number:
                uid = log(at="2026-03-28T23:30")
                lookbacks.expect(practice, uid, "It rains.", 70, "2026-10-25")
            due = lookbacks.due_readings(practice, date(2026, 10, 25))
            early = lookbacks.due_readings(practice, date(2026, 10, 24))
            (event,) = found(course_shelf, "Look back")
            seen.add((due[0][2], len(early), *days(event), readings.reading(practice, uid).at))
    finally:
        monkeypatch.undo()
        set_zone()
    assert seen == {
        ("2026-10-25", 0, date(2026, 10, 25), date(2026, 10, 26), datetime(2026, 3, 28, 23, 30))
    }


BINDER = "0191a4d6-1111-7000-8000-000000000000"


@given(st.text(min_size=1, max_size=200).filter(lambda t: t.strip()), st.dates(date(2026, 1, 1)))
def test_any_words_and_days_are_read_back(words, day):
    entry = agenda.Entry(
        BINDER, "look back", day, day, "Look back", 1, words, (words,),
    )  # fmt: skip
    data = calendar_file.written([entry], TODAY)
    lines = data.split(b"\r\n")
    assert max(map(len, lines)) <= 75
    assert not any(b"\n" in line or b"\r" in line for line in lines)
    assert all(line.decode() == line.decode("utf-8", "replace") for line in lines)
    (event,) = icalendar.Calendar.from_ical(data).walk("VEVENT")
    kept = "".join(sign for sign in words if sign >= " " or sign == "\n")
    kept = re.sub("[\x7f-\x9f]", "", kept)
    assert str(event["summary"]).split() == f"Look back: {kept}".split()
    assert event.decoded("dtstart") == day
    if day < date.max:
        assert event.decoded("dtend") == day + timedelta(days=1)


def test_signs_that_part_a_text_are_escaped():
    """RFC 5545, 3.3.11: backslash, comma and semicolon after a backslash, a new line as \\n."""
    words = "bread, salt; a \\ stroke"
    entry = agenda.Entry(
        BINDER, "look back", TODAY, TODAY, "Look back", 1, words, ("one", "two, three"),
    )  # fmt: skip
    unfolded = calendar_file.written([entry], TODAY).replace(b"\r\n ", b"")
    assert b"SUMMARY:Look back: bread\\, salt\\; a \\\\ stroke\r\n" in unfolded
    assert b"DESCRIPTION:one\\ntwo\\, three\r\n" in unfolded
    (event,) = icalendar.Calendar.from_ical(unfolded).walk("VEVENT")
    assert str(event["summary"]) == f"Look back: {words}"
    assert str(event["description"]) == "one\ntwo, three"


def test_an_older_file_stays_when_the_new_one_cannot_be_written(course_shelf, tmp_path):
    with pytest.raises(CanMend, match="could not be written"):
        calendar_file.save(course_shelf, tmp_path / "nowhere" / "due.ics", TODAY)
    out = tmp_path / "due.ics"
    assert calendar_file.save(course_shelf, out, TODAY) == len(events(course_shelf))
    assert out.read_bytes() == calendar_file.calendar(course_shelf, TODAY)
    assert [path.name for path in tmp_path.glob("*due*")] == ["due.ics"]
