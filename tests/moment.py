"""The day, the hour and the zone a run of the tests believes in.

`--moment 2028-02-29T23:40 --zone Asia/Kathmandu` puts the clock there, `--moment any` somewhere
else each time, and so does CI; the first line of the run says what repeats it. Left out, the clock
is the machine's. Programs that tests start keep the machine's day, but share the zone.
"""

import os
import random
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
import time_machine

ANY = "any"
KNOWN = (
    ("2027-01-31T23:59", "Pacific/Kiritimati"),  # month ends, far east and far west
    ("2027-02-28T23:50", "Pacific/Pago_Pago"),
    ("2027-04-30T00:00", "Asia/Kathmandu"),
    ("2028-02-29T12:00", "UTC"),  # leap day
    ("2028-02-29T23:58", "America/New_York"),
    ("2027-12-31T23:58", "Europe/London"),  # the turn of a year
    ("2028-01-01T00:00", "Pacific/Apia"),
    ("2027-03-28T01:58", "Europe/Paris"),  # an hour is left out, before and at midnight
    ("2027-09-04T23:58", "America/Santiago"),
    ("2027-10-31T01:58", "Europe/Paris"),  # an hour comes twice; in one zone half an hour does
    ("2027-10-31T02:30", "Europe/Paris"),
    ("2027-04-04T01:58", "Australia/Lord_Howe"),
)
"""Moments at which programs go wrong, each with a zone in which it is one."""
ZONES = (*dict.fromkeys(zone for _, zone in KNOWN), "Asia/Tokyo", "America/St_Johns")
FIRST = datetime(2024, 1, 1)
MINUTES = 12 * 366 * 24 * 60
"""Any other moment lies in the twelve years from the first on."""


def pytest_addoption(parser):
    """The two options."""
    group = parser.getgroup("moment")
    group.addoption("--moment", default="", help="as 2028-02-29T23:40, or 'any'")
    group.addoption("--zone", default="", help="as Pacific/Apia; with 'any' that is chosen too")


def pytest_configure(config):
    """Move the clock before any test is read; a worker is told where to."""
    told = getattr(config, "workerinput", {}).get("moment")
    moment, zone = told or _chosen(config.option.moment, config.option.zone)
    config.moment = moment, zone
    if moment:
        at = datetime.fromisoformat(moment).replace(tzinfo=ZoneInfo(zone))
        moved = time_machine.travel(at, tick=True)
        moved.start()
        config.add_cleanup(moved.stop)


@pytest.hookimpl(optionalhook=True)
def pytest_configure_node(node):
    """Every worker stands at the same moment."""
    node.workerinput["moment"] = node.config.moment


@pytest.hookimpl(trylast=True)
def pytest_sessionstart(session):
    """Say what repeats the run: the moment, and the order."""
    option, (moment, zone) = session.config.option, session.config.moment
    reporter = session.config.pluginmanager.get_plugin("terminalreporter")
    if reporter is not None:
        seed = getattr(option, "randomly_seed", "")  # -p no:randomly keeps the order of the files
        order = f" --randomly-seed={seed}" if seed else ""
        clock = f" --moment={moment} --zone={zone}" if moment else ""
        reporter.write_line(f"To repeat this run:{order}{clock}")


def _chosen(moment, zone):
    """What was asked for; on CI any moment, unless one was."""
    if moment == ANY or (not moment and os.environ.get("CI")):
        return _any(random.SystemRandom())
    return moment, zone or "UTC"


def _any(chance):
    """Every other time one of the moments known to be hard."""
    if chance.random() < 0.5:
        return chance.choice(KNOWN)
    at = FIRST + timedelta(minutes=chance.randrange(MINUTES))
    return at.isoformat(timespec="minutes"), chance.choice(ZONES)
