"""How a reading ended: the mark and the words for what came of all it expected."""

from __future__ import annotations

from binder.counting import spelled
from binder.study.readings.lookbacks import Verdict

WAITING = "waiting"
MIXED = "mixed"


def verdict_of(verdicts: tuple[str, ...]) -> str:
    """The mark for a reading's expectations: the verdict they share, MIXED when they differ,
    WAITING while any waits, '' when nothing was expected.
    """
    if not verdicts:
        return ""
    said = set(verdicts)
    if "" in said:
        return WAITING
    return said.pop() if len(said) == 1 else MIXED


def ended_words(verdicts: tuple[str, ...]) -> str:
    """How a reading's expectations ended, in words that hide none of several.

    'came about' of one; 'one of two' where one came about and one did not; 'one of three, one
    waiting'; 'two partly'. What none is known of is said once: 'waiting', "can't tell".
    """
    said = set(verdicts)
    if len(verdicts) == 1 or said in ({""}, {Verdict.UNKNOWN}):
        return verdict_of(verdicts)
    of = {verdict: spelled(verdicts.count(verdict)) for verdict in said}
    judged = said & {Verdict.CAME, Verdict.NOT}
    parts = [f"{of.get(Verdict.CAME, 'none')} of {spelled(len(verdicts))}"] if judged else []
    rest = ((Verdict.PARTLY, "partly"), (Verdict.UNKNOWN, "can't tell"), ("", WAITING))
    parts += [f"{of[verdict]} {words}" for verdict, words in rest if verdict in said]
    return ", ".join(parts)
