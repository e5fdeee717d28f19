"""Sentences about what came of it that say no more than the numbers bear."""

from __future__ import annotations

from binder.counting import counted, times
from binder.reckon.calibration import Bin, Outcomes, Record, always, mean_sure, score, total
from binder.reckon.chance import Interval, wilson

FEW = 10
"""Below so many cases nothing is concluded: of ten, the interval still spans half of all there is
(for 5 of 10, from 24 to 76 in 100). The bound is our own choice.
"""

SHADED = (
    "Shaded: the chances that fit such a count (Wilson’s interval; of 100 made like it, about 95"
    " hold the true chance). Stroke: what I said. Hollow: few."
)
"""What the picture of a group's interval shows. E. B. Wilson 1927 (see `chance.wilson`); that about
95 of 100 do, on average over all chances: L. D. Brown, T. T. Cai and A. DasGupta, Interval
estimation for a binomial proportion, Statistical Science 16 (2001) 101-133.
"""

TOO_FEW = "With so few cases nothing can be said yet."

HALVES = "“Partly” counts one half; what could not be told or was let go is left out."


def came_words(out: Outcomes) -> str:
    """'it came about 19 times of 29', 'it came about 17 times and partly four times, of 29'."""
    if out.cases == 1:
        came = "came about" if out.came else "did not come about"
        return f"it {'came about partly' if out.partly else came} the one time"
    if out.partly and not out.came:
        return f"it came about partly {times(out.partly)} of {out.cases}, and never wholly"
    if out.partly:
        return f"it came about {times(out.came)} and partly {times(out.partly)}, of {out.cases}"
    if not out.came:
        return f"it never came about in {out.cases}"
    return f"it came about {times(out.came)} of {out.cases}"


def said_words(low: int, high: int) -> str:
    """'80% or more', 'less than 20%', '40 to 59%'."""
    if high >= 100:
        return f"{low}% or more"
    return f"{low} to {high - 1}%" if low else f"less than {high}%"


def bin_words(of: Bin) -> str:
    """'When I said 80% or more, it came about 19 times of 29.', and what follows from it."""
    said = f"When I said {said_words(of.low, of.high)}, {came_words(of.outcomes)}."
    return f"{said} {bears(of.outcomes, of.sure, of.interval)}"


def bears(out: Outcomes, sure: float, interval: Interval) -> str:
    """What a share may be held to mean against the sureness said (0 to 1)."""
    if out.cases < FEW:
        return TOO_FEW
    if interval.holds(sure):
        return "That fits what I said, as far as these cases go."
    way = "less" if sure > interval.high else "more"
    return f"That is {way} often than I said."


def counts_words(out: Outcomes, unknown: int = 0, let_go: int = 0, waiting: int = 0) -> str:
    """'41 statements: 19 came about, 9 partly, 13 did not; 3 could not be told, 5 wait.'"""
    judged = [f"{out.came} came about", f"{out.partly} partly", f"{out.missed} did not"]
    rest = [
        counted(count, one, many)
        for count, one, many in (
            (unknown, "could not be told", "could not be told"),
            (let_go, "was let go", "were let go"),
            (waiting, "waits", "wait"),
        )
        if count
    ]
    stated = out.cases + unknown + let_go + waiting
    parts = [", ".join(part) for part in (judged if out.cases else [], rest) if part]
    told = counted(stated, "statement")
    return f"{told}: {'; '.join(parts)}." if parts else "No statements yet."


def range_words(interval: Interval) -> str:
    """'between 47 and 80 in 100'."""
    return f"between {interval.low * 100:.0f} and {interval.high * 100:.0f} in 100"


def fits_words(interval: Interval) -> str:
    """What a score interval says of a count: under a chance outside it, a count so far off would
    come less than about once in twenty (Wilson 1927; how nearly, Brown, Cai and DasGupta 2001).
    """
    return f"Any chance {range_words(interval)} fits this count."


def record_words(record: Record) -> tuple[str, ...]:
    """What can be said of a whole record: a sentence when cases are few, else four."""
    out, sure = total(record), mean_sure(record)
    interval = wilson(out.hits, out.cases)
    if sure is None or interval is None:
        return ("Nothing has been judged yet.",)
    said = f"On average I said {sure:.0%}, and {came_words(out)}."
    if out.cases < FEW:
        return (said, TOO_FEW)
    return (
        said,
        fits_words(interval),
        bears(out, sure, interval),
        score_words(record),
    )


def score_words(record: Record) -> str:
    """The Brier score beside what plainer guesses would have scored; '' where nothing was judged.

    Both plain guesses are reckoned from the same outcomes.
    """
    mine, even = score(record), always(record, 0.5)
    mean = total(record).share
    base = always(record, mean)
    if mine is None or even is None or base is None:
        return ""
    return (
        f"Brier score {mine:.2f} (0 is best); saying 50% each time would score {even:.2f}, "
        f"and, with hindsight, {mean:.0%} each time {base:.2f}."
    )


def groups_words(groups: int, apart: int) -> str:
    """A word of warning beside a list of groups; `apart` of them lie outside their range.

    An interval of 95 in 100 misses the true chance about once in twenty, so that many groups are
    to be expected there though every one of them came about just as often as was said.
    """
    if groups < 2:
        return ""
    found = {0: "none does", 1: "one does"}.get(apart, f"{apart} do")
    return (
        f"Were I right about all of these {groups} groups, chance would still put about one in "
        f"twenty outside its range, {groups / 20:.1f} of {groups} on average; here {found}. "
        "A single group that stands out proves nothing."
    )
