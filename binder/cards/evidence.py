"""Whether a word in running text is meant as a card: weighs what stands around it."""

import re
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from functools import cached_property

from binder.cards import clues, numbered
from binder.cards.around import NEAR, REACH, Around, Candidate, Grade, Kind, Talk, beside, narrow
from binder.cards.false_friends import part_of_a_name

_GAP = 40
"""The most characters between two cards of one list."""
_SHORT = 600
"""Characters of a note so short that it need not say it is about cards."""
_OUT_IT_CAME = re.compile(
    r" (?:(?:came|comes|turn(?:ed|s)) up|(?:fell|falls|jumped|flew) out)(?=[.,;!?)]|$| again\b)"
)
_ENDS = re.compile(r"\n|[.;!?]\s")
_MOST_KEPT = 8192
"""Names with what stands around them, of which the worth is kept."""
_kept: dict[Around, Grade] = {}
_JOINTS = (".", "-", "'", "’")
_LIGHTS = ("major-18", "major-19")
_SKY = (*_LIGHTS, "major-17", "major-21")
_NO_ARTICLE = ("major-08", "major-11", "major-13", "major-14", "major-20")


def accepted(candidates: Sequence[Candidate], *, of_cards: bool = False) -> Iterator[Candidate]:
    """Those meant as cards, in order; `of_cards` where the whole text is known to be about them."""
    grades = [_weighed(each) for each in candidates]
    _lift_by_company(candidates, grades)
    _settle_by_talk(candidates, grades, of_cards=of_cards)
    graded = list(zip(candidates, grades, strict=True))
    known = _Known(graded)
    last = -REACH
    for each, worth in graded:
        at_hand = each.kind is not Kind.CODE and each.start - last < REACH
        enough = worth is Grade.SURE or (at_hand and worth >= Grade.AT_HAND)
        if enough or (worth is Grade.IF_KNOWN and known.near(each)):
            yield each
            last = each.end


class _Known:
    """Where cards are surely named, and whether any is by its code."""

    def __init__(self, graded: Sequence[tuple[Candidate, Grade]]) -> None:
        self._graded = graded

    @cached_property
    def _coded(self) -> bool:
        return any(each.kind is Kind.CODE and worth is Grade.SURE for each, worth in self._graded)

    @cached_property
    def _places(self) -> dict[str, list[int]]:
        places: dict[str, list[int]] = {}
        for each, worth in self._graded:
            if worth is Grade.SURE:
                places.setdefault(each.key, []).append(each.start)
        return places

    def near(self, each: Candidate) -> bool:
        """Whether the card is surely named just before or after; for a code, any code."""
        if each.kind is Kind.CODE and self._coded:
            return True
        places = self._places.get(each.key, [])
        at = bisect_left(places, each.start - NEAR)
        return at < len(places) and places[at] < each.start + NEAR


def _settle_by_talk(
    candidates: Sequence[Candidate], grades: list[Grade], *, of_cards: bool
) -> None:
    """A title that only its capital tells of is a card where cards are spoken of at all."""
    if Grade.NAMED not in grades:
        return
    text = candidates[0].text
    sure = [
        each.start
        for each, worth in zip(candidates, grades, strict=True)
        if worth is Grade.SURE and each.kind is not Kind.CODE
    ]
    talk = Talk(text)
    for at, each in enumerate(candidates):
        if grades[at] is Grade.NAMED:
            place = bisect_left(sure, each.start - NEAR)
            by_one = place < len(sure) and sure[place] < each.start + NEAR
            spoken = of_cards or len(text) < _SHORT or by_one or talk.near(each.start)
            grades[at] = Grade.SURE if spoken else Grade.IN_COMPANY


def forget() -> None:
    """Let go of all that was kept from call to call."""
    _kept.clear()


def _weighed(each: Candidate) -> Grade:
    """What the name is worth without its neighbours; kept, as most text stays while one types."""
    around = each.around
    worth = _kept.get(around)
    if worth is None:
        if len(_kept) >= _MOST_KEPT:
            _kept.clear()
        worth = _kept[around] = grade(each)
    return worth


def grade(each: Candidate) -> Grade:
    """What the name is worth without its neighbours."""
    kind = each.kind
    if kind is Kind.CHOSEN:
        return Grade.SURE
    if _in_an_address(each):
        return Grade.NEVER
    if kind is Kind.WORD or kind is Kind.PHRASE:
        return _title(each)
    return _BY_KIND[kind](each)


def _in_an_address(each: Candidate) -> bool:
    """Part of a file name, an e-mail address or a hyphened word."""
    text, start = each.text, each.start
    last, first = text[max(start - 1, 0) : start], each.after[:2]
    if last in ("@", "\\") or first[:1] in ("@", "\\") or (last == "/" and not each.capital):
        return True
    if last == "-" and start > 1 and text[start - 2].isalnum():
        return True
    return first[:1] in _JOINTS and first[1:].isalnum() and first not in ("'s", "’s")


def _title(each: Candidate) -> Grade:
    if not each.capital:
        return Grade.SURE if _said_as_card(each) else _small_letters(each)
    if part_of_a_name(each) or (each.surface == "Sun" and _weekday(each)):
        return Grade.NEVER
    if each.key in _LIGHTS and _in_the_sky(each):
        return Grade.SURE if _said_as_card(each) else Grade.NEVER
    if each.kind is Kind.PHRASE or _said_as_card(each):
        return Grade.SURE
    return Grade.NAMED if each.article or not each.opens else _opening_word(each)


def _several(each: Candidate) -> Grade:
    """'two Towers in a week'."""
    counted = [word.strip("*_") for word in each.cues[-1:]]
    if not each.capital or counted not in clues.SEVERAL or part_of_a_name(each):
        return Grade.NEVER
    return Grade.SURE if clues.IN_A_ROW.match(each.after) else Grade.IF_KNOWN


def _said_as_card(each: Candidate) -> bool:
    after = each.after
    turned = clues.TURNED if each.capital else clues.TURNED_PLAINLY
    if turned.match(after) or clues.SAID_OF_CARDS.match(after):
        return True
    if _drawn(each) or _always_got(each):
        return True
    if _read_as(each) or (each.capital and not clues.LAID.isdisjoint(each.cues[-1:])):
        return True
    stops = clues.STOP.match(after)
    if not stops and not each.capital:
        return False
    if stops and each.after_colon and clues.PLACE_LEAD.search(each.before):
        return True
    return _card_before(each) or _letter_for(each) or _asked_got(each)


def _drawn(each: Candidate) -> bool:
    """'I drew the hermit this morning': drawn, and nothing said that one says of a drawing."""
    if not each.drawn:
        return False
    return bool(clues.NOTHING_MORE.match(each.after) or clues.WHEN_DRAWN.match(each.after))


def _read_as(each: Candidate) -> bool:
    """'what does the tower mean next to the star', 'read the tower as advice'."""
    return bool(clues.READ_AS.match(each.after) and clues.READING.search(each.before))


def _always_got(each: Candidate) -> bool:
    """'I always get the lovers'."""
    cues = each.cues
    if not cues or cues[-1] not in clues.GETS:
        return False
    if clues.WHEN_ASKED.match(each.after):
        return True
    seen = each.key in _LIGHTS and cues[-1] in clues.SEES
    often = bool(clues.ALWAYS.intersection(cues[-3:-1])) and not seen
    return often and clues.NOTHING_MORE.match(each.after) is not None


def _asked_got(each: Candidate) -> bool:
    """'asked about the roof and got the tower', 'the last card was the sun'."""
    verb = each.cues[-1] if each.cues else ""
    if verb in clues.HAPPENED:
        if clues.CARD_WAS.search(each.before):
            return True
        asked = clues.ASKED_GOT.search(each.before)
        return asked is not None and (each.key not in _SKY or " for " not in asked[0])
    return False


def _letter_for(each: Candidate) -> bool:
    """'D for the devil'."""
    if each.cues[-1:] != ["for"]:
        return False
    letter = clues.LETTER_FOR.search(each.before)
    return letter is not None and letter[1].lower() == _bare(each)[0]


def _bare(each: Candidate) -> str:
    """The name in small letters without its article."""
    return (each.surface[4:] if each.article else each.surface).lower()


def _card_before(each: Candidate) -> bool:
    """'my card for the month is' and the like."""
    cues = list(each.cues)
    while cues and cues[-1] in clues.AFTER_CARD_WORDS:
        cues.pop()
    if cues and cues[-1] in clues.CARD_WORDS:
        return clues.OTHER_CARDS.isdisjoint(cues[-2:-1])
    lead = clues.CARD_LEAD.search(each.before) if each.after_colon else None
    if lead is None:
        return False
    kind = each.before[: lead.start()].lower().split()[-1:]
    return clues.OTHER_CARDS.isdisjoint(kind)


def _small_letters(each: Candidate) -> Grade:
    if each.indefinite:
        return Grade.NEVER
    if each.cues[-1:] in clues.OURS and not each.article:
        return Grade.IN_COMPANY
    if each.kind is Kind.PHRASE or _bare(each) in clues.NO_COMMON_WORD:
        of_another = each.after.startswith((" of ", " of\n"))
        if not of_another and not clues.AT_A_SHOW.match(each.after):
            return Grade.NAMED
    if each.article and _again(each):
        return Grade.IF_KNOWN
    if each.article and (_among_them(each) or _came_with_another(each)):
        return Grade.AT_HAND
    listed = clues.STOP.match(each.after) or clues.JOINED.match(each.after)
    return Grade.IN_COMPANY if listed else Grade.NEVER


def _again(each: Candidate) -> bool:
    """'The devil again!'; the sun and the moon are so often."""
    return each.key not in _SKY and clues.AGAIN.match(each.after) is not None and each.opens


def _among_them(each: Candidate) -> bool:
    """'the devil between them', 'and then the devil came up'."""
    if each.key in _SKY:
        return False
    return bool(clues.AMONG_THEM.match(each.after) or _OUT_IT_CAME.match(each.after))


def _came_with_another(each: Candidate) -> bool:
    """'drew the hermit this morning and the star last night', 'the third was the star'."""
    after = each.after
    if not (clues.STOP.match(after) or clues.WHEN_DRAWN.match(after)) or not each.cues:
        return False
    last = each.cues[-1]
    if last in ("was", "is", "came", "fell"):
        return clues.NUMBERED_CARD.search(each.before) is not None
    if each.key in _SKY and after[:1] == ",":
        return False
    joined = last[-1] == "," or last in ("and", "then")
    return joined and clues.DRAWN_EARLIER.search(each.before) is not None


def _in_the_sky(each: Candidate) -> bool:
    cues = each.cues
    if cues and cues[-1] in ("to", "with"):
        cues = cues[:-1]
    return bool(clues.IN_THE_SKY.match(each.after)) or (bool(cues) and cues[-1] in clues.SKY_BEFORE)


def _weekday(each: Candidate) -> bool:
    """'Sun 3 May', 'Sat and Sun', 'Saturday yes, Sun no'."""
    after = each.after
    if clues.DAY_OR_TIME.match(after):
        return True
    return each.cues[-1:] in clues.ON_A_DAY or clues.OTHER_DAY.search(each.before) is not None


def _opening_word(each: Candidate) -> Grade:
    """A capital letter that any first word has: 'Justice was done'."""
    if clues.TABLE_TALK.match(each.after):
        return Grade.NAMED
    if clues.NOTHING_MORE.match(each.after):
        return Grade.IN_COMPANY if _scolded(each) else Grade.NAMED
    if clues.STOP.match(each.after):
        if clues.ITEM.search(each.before):
            return Grade.NAMED
        aside = each.after[:1] == "," and not clues.PARAGRAPH.search(each.before)
        return Grade.AT_HAND if aside else Grade.IF_KNOWN
    if clues.ITS_OWN.match(each.after):
        own = each.key in _NO_ARTICLE and not clues.NOBODYS.match(each.after)
        return Grade.IF_KNOWN if own else Grade.IN_COMPANY
    shown = clues.ON_SHOW.match(each.after) and each.key not in _LIGHTS
    return Grade.IF_KNOWN if shown else Grade.IN_COMPANY


def _scolded(each: Candidate) -> bool:
    """'Dropped the pack. Fool.'"""
    return each.surface == "Fool" and "\n" not in each.before[-3:]


def _lift_by_company(candidates: Sequence[Candidate], grades: list[Grade]) -> None:
    """Raise what stands in one list with a sure card to sure."""
    for run in _runs(candidates, grades):
        if len(run) < 2:
            continue
        best = max(grades[at] for at in run)
        sure = best >= Grade.NAMED
        if sure or _list_of_codes(candidates, run) or _list_drawn(candidates, run):
            for at in run:
                if grades[at] is not Grade.SURE and _fits(candidates, run, at):
                    grades[at] = best if sure else Grade.SURE


def _runs(candidates: Sequence[Candidate], grades: Sequence[Grade]) -> Iterator[list[int]]:
    """Places of candidates that follow each other as in a list; sure pairs need no look."""
    run: list[int] = []
    for at, each in enumerate(candidates):
        if grades[at] is Grade.NEVER:
            continue
        settled = run and min(grades[at], grades[run[-1]]) >= Grade.NAMED
        if run and (settled or not _neighbours(candidates[run[-1]], each)):
            yield run
            run = []
        run.append(at)
    if run:
        yield run


def _neighbours(one: Candidate, other: Candidate) -> bool:
    if other.start - one.end > _GAP:
        return False
    gap = narrow(one.text[one.end : other.start])
    return clues.BETWEEN.fullmatch(gap) is not None


def _list_of_codes(candidates: Sequence[Candidate], run: Sequence[int]) -> bool:
    """Two codes or more that are not sums of money or time: not all of one suit.

    Or three cards in all, of which one is called by its code and one by its name.
    """
    suits = {candidates[at].key[:3] for at in run if candidates[at].kind is Kind.CODE}
    named = any(candidates[at].kind in (Kind.WORD, Kind.PHRASE) for at in run)
    return len(suits) > 1 or (len(run) > 2 and named and bool(suits))


def _list_drawn(candidates: Sequence[Candidate], run: Sequence[int]) -> bool:
    """'I drew the devil, the star and the sun', but not only what one draws in the sky."""
    if not candidates[run[0]].drawn:
        return False
    return any(candidates[at].key not in _SKY for at in run)


def _fits(candidates: Sequence[Candidate], run: Sequence[int], at: int) -> bool:
    """Whether company is enough: small letters that end one line do not belong to the next."""
    each = candidates[at]
    if each.kind is Kind.NUMERAL:
        return _numeral_fits(each, [candidates[other] for other in beside(run, at)])
    if each.kind is Kind.WORD and not each.capital and not each.opens:
        if at == run[0]:
            return _ENDS.search(each.text, each.end, candidates[run[1]].start) is None
        if at == run[-1] and not clues.STOP.match(each.after):
            return False
        return each.cues[-1:] == [] or each.cues[-1] not in clues.ABOUT
    return True


def _numeral_fits(each: Candidate, beside: Sequence[Candidate]) -> bool:
    """A doubtful numeral needs its own title beside it; a single letter, another numeral."""
    if any(other.key == each.key for other in beside):
        return True
    return len(each.surface) == 1 and any(
        other.kind is Kind.NUMERAL and (each.surface != "I" or other.start > each.start)
        for other in beside
    )


_BY_KIND = {
    Kind.NUMERAL: numbered.numeral,
    Kind.RANKED: numbered.ranked,
    Kind.CODE: numbered.code,
    Kind.ENTRY: numbered.entry,
    Kind.SEVERAL: _several,
}
