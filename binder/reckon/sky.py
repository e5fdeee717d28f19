"""The sky at a moment: phase, age and light of the Moon, sign and decan of the Sun.

Positions come from astronomy-engine, a port of VSOP87 and of Montenbruck and Pfleger's Moon,
truncated to about one arc minute; it is imported at the first moment asked for. Longitudes are
apparent, geocentric, and counted on the ecliptic of date from the March equinox.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, timezone, tzinfo
from functools import cache
from typing import Any
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from binder.cards.facts import CARDS
from binder.errors import CanMend

SIGNS = (
    "Aries", "Taurus", "Gemini", "Cancer", "Leo", "Virgo",
    "Libra", "Scorpio", "Sagittarius", "Capricorn", "Aquarius", "Pisces",
)  # fmt: skip

PHASES = (
    "new", "waxing crescent", "first quarter", "waxing gibbous",
    "full", "waning gibbous", "last quarter", "waning crescent",
)  # fmt: skip
"""Eighths of the round from new Moon to new Moon, each about its middle (common practice)."""

MONTH = 29.530588853
"""Days from new Moon to new Moon on average (Meeus, Astronomical Algorithms, 1998, ch. 49)."""


@dataclass(frozen=True, slots=True)
class Sky:
    """The sky at one moment. Angles are in degrees.

    `elongation` is the Moon's longitude less the Sun's, 0 to 360; `phase` its name from PHASES;
    `age` days since the last new Moon; `lit` the lit part of the Moon's disc, 0 to 1;
    `sun` the Sun's longitude; `sign` from SIGNS; `degree` 0 to 30 within it; `decan` 1 to 3;
    `card` the key of the decan's pip card; `noon` is True where no hour was known.
    """

    elongation: float
    phase: str
    age: float
    lit: float
    sun: float
    sign: str
    degree: float
    decan: int
    card: str
    noon: bool = False


def sky(at: datetime) -> Sky:
    """The sky at a moment that knows its zone; ValueError for one that does not."""
    if at.tzinfo is None:
        raise ValueError("the moment has no zone")
    import astronomy

    utc = at.astimezone(UTC)
    seconds = utc.second + utc.microsecond / 1e6
    time = astronomy.Time.Make(utc.year, utc.month, utc.day, utc.hour, utc.minute, seconds)
    sun = astronomy.SunPosition(time).elon % 360.0
    apart = _apart(time)
    return Sky(
        elongation=apart,
        phase=phase_name(apart),
        age=_age(time, apart),
        lit=float(astronomy.Illumination(astronomy.Body.Moon, time).phase_fraction),
        sun=sun,
        sign=SIGNS[int(sun // 30) % 12],
        degree=sun % 30,
        decan=int(sun % 30 // 10) + 1,
        card=decan_card(sun),
    )


def then(at: date, zone: str = "") -> Sky:
    """The sky over a reading: `at` is its local time, `zone` as the reading keeps it.

    A zone is an offset as '+0100', a name as 'Europe/London', or '' for this computer's. Of a day
    alone no hour was noted, and the sky is that of noon.
    """
    noon = not isinstance(at, datetime)
    at = at if isinstance(at, datetime) else datetime.combine(at, time(12))
    there = zone_of(zone)
    found = sky(at.astimezone() if there is None else at.replace(tzinfo=there))
    return Sky(**{name: getattr(found, name) for name in Sky.__slots__} | {"noon": noon})


def zone_of(text: str) -> tzinfo | None:
    """The zone in '+0100', '+01:00', 'Z' or a name of the IANA list; None for ''."""
    if not text:
        return None
    digits = text.replace(":", "")
    try:
        if text[0] in "+-" and digits[1:].isdigit() and len(digits) in (3, 5, 7):
            full = digits.ljust(7, "0")
            past = timedelta(hours=int(full[1:3]), minutes=int(full[3:5]), seconds=int(full[5:]))
            return timezone(-past if text[0] == "-" else past)
        return UTC if text in ("Z", "UTC") else ZoneInfo(text)
    except (ValueError, OSError, ZoneInfoNotFoundError) as error:
        raise CanMend(
            f"“{text}” is no time zone; write it as +01:00 or as Europe/London."
        ) from error


def phase_name(elongation: float) -> str:
    """The name of the Moon's phase at that distance from the Sun, in degrees."""
    return PHASES[int((elongation % 360 + 22.5) // 45) % 8]


@cache
def _decans() -> tuple[str, ...]:
    """The 36 pip cards in the order of their decans; a sign's three rise by number."""
    pips = [card for card in CARDS if card.arcana == "minor" and 2 <= card.number <= 10]
    return tuple(card.key for sign in SIGNS for card in pips if card.sky.endswith(f" in {sign}"))


def decan_card(longitude: float) -> str:
    """The key of the pip card of the decan at a longitude in degrees."""
    return _decans()[int(longitude % 360 // 10) % 36]


def _apart(time: Any) -> float:
    """Degrees from the Sun to the Moon, 0 to 360.

    The library's own phase angle leaves out the Sun's aberration, which is 40 seconds of time.
    """
    import astronomy

    return float(astronomy.EclipticGeoMoon(time).lon - astronomy.SunPosition(time).elon) % 360.0


def _age(time: Any, apart: float) -> float:
    """Days since the last new Moon, found from the mean motion and then put right."""
    import astronomy

    guess = time.AddDays(-apart / 360.0 * MONTH)
    new = astronomy.Search(_from_new, None, guess.AddDays(-2), guess.AddDays(2), 1.0)
    return max(0.0, float(time.ut - new.ut))


def _from_new(_: None, time: Any) -> float:
    """Degrees past new Moon, negative before it; what the search brings to nought."""
    apart = _apart(time)
    return apart - 360.0 if apart > 180.0 else apart


def moon_words(of: Sky) -> str:
    """'Waxing gibbous Moon, 10 days old, 79% lit'; a full Moon is called so.

    A new Moon has no age to tell: by its name it may still be a day or two before it.
    """
    if of.phase == "new":
        return "New Moon"
    days = int(of.age + 0.5)
    name = f"{of.phase.capitalize()} Moon"
    if "quarter" in of.phase:
        name = f"Moon in its {of.phase}"
    old = "a day" if days == 1 else f"{days} days"
    return f"{name}, {old} old, {of.lit:.0%} lit"


def sun_words(of: Sky) -> str:
    """'Sun in Scorpio, second decan'; the card of the decan is `Sky.card`."""
    return f"Sun in {of.sign}, {('first', 'second', 'third')[of.decan - 1]} decan"


def lines(of: Sky) -> tuple[str, ...]:
    """The sky then, in words: the Moon, the Sun, and that noon was taken where it was."""
    said = (moon_words(of), sun_words(of))
    return (*said, "Reckoned for noon, as no hour was noted") if of.noon else said
