"""A unit or a whole course that is given days which have passed: taken, and told in a sentence."""

from datetime import date

import pytest

from binder import cli
from binder.study.course import course

TODAY = date(2026, 11, 25)


@pytest.mark.parametrize(
    ("starts", "ends", "said"),
    [
        ("2026-11-24", "2026-12-20", "“Cups” began 1 day ago, so it counts as under way."),
        ("2026-11-01", "", "“Cups” began 24 days ago, so it counts as under way."),
        ("2026-10-01", "2026-11-20",
         "“Cups” ended 5 days ago, so it counts as late until its cards are done."),
        ("2026-11-01", "2026-11-25",
         "“Cups” began 24 days ago, so it counts as under way."),
        ("2026-11-25", "2026-12-20", ""),
        ("", "", ""),
    ],
)  # fmt: skip
def test_what_days_that_have_passed_mean(starts, ends, said):
    assert course.begun_words("Cups", starts, ends, TODAY) == said


def test_a_course_begun_in_the_past_is_laid_out_and_told(tmp_path, capsys):
    assert cli.main(["new", str(tmp_path / "shelf"), "--start", "2020-01-01"]) == 0
    told = capsys.readouterr().out.splitlines()
    assert [line.partition(" ")[0] for line in told[:3]] == ["Laid"] * 3
    assert told[3].startswith("“First septenary” ended ")


def test_a_start_that_is_no_day_lays_out_nothing(tmp_path, capsys):
    assert cli.main(["new", str(tmp_path / "shelf"), "--start", "soon"]) == 2
    assert "is no day" in capsys.readouterr().err
    assert not (tmp_path / "shelf").exists()
