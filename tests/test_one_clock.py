"""Nothing but the clock asks the machine what day or time it is, and the check of that bites."""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
RUFF = str(Path(sys.executable).with_name("ruff"))
CLOCK = "binder/store/clock.py"


def lint(*words: str, code: str = "") -> str:
    """What the check says, whatever a line says against it; empty if it found nothing."""
    command = [RUFF, "check", "--select=TID251", "--ignore-noqa", "--no-cache", *words]
    done = subprocess.run(command, cwd=ROOT, input=code, capture_output=True, text=True)
    assert done.returncode in (0, 1), done.stderr
    return done.stdout if done.returncode else ""


def test_nobody_asks_the_machine():
    assert lint("binder", "ui", "tests") == ""


@pytest.mark.parametrize(
    "code",
    [
        "from datetime import date\nprint(date.today())",
        "import datetime as dt\nprint(dt.date.today())",
        "from datetime import datetime\nprint(datetime.now())",
        "from datetime import UTC, datetime\nprint(datetime.now(UTC))",
        "from datetime import datetime\nprint(datetime.today())",
        "from datetime import datetime\nprint(datetime.utcnow())",
        "from datetime import datetime as moment\nclock = moment.now",
        "import time\nprint(time.time())",
        "from time import time\nprint(time())",
        "from time import time_ns\nprint(time_ns())",
        "import time\nprint(time.localtime())",
        "import time\nprint(time.gmtime())",
        "from PySide6.QtCore import QDate\nprint(QDate.currentDate())",
        "from PySide6.QtCore import QTime\nprint(QTime.currentTime())",
        "from PySide6 import QtCore\nprint(QtCore.QDateTime.currentDateTime())",
        "from PySide6.QtCore import QDateTime\nprint(QDateTime.currentDateTimeUtc())",
        "from PySide6.QtCore import QDateTime\nprint(QDateTime.currentMSecsSinceEpoch())",
    ],
)
def test_asking_the_machine_is_caught(code):
    assert "TID251" in lint("--stdin-filename=ui/desk/bar.py", "-", code=code)


@pytest.mark.parametrize(
    ("spot", "may"),
    [
        (CLOCK, True),
        ("binder/store/change.py", False),
        ("binder/study/put_by.py", False),
        ("binder/cli.py", False),
        ("ui/session.py", False),
        ("tests/test_cli.py", False),
    ],
)
def test_only_the_clock_may_ask(spot, may):
    code = "from datetime import datetime\nprint(datetime.now())"
    assert (lint(f"--stdin-filename={spot}", "-", code=code) == "") is may
