"""Whether a word in running text is meant as a card: weighs what stands around it."""

from collections.abc import Iterator, Sequence
from enum import IntEnum

from binder.cards import clues
from binder.cards.around import REACH, Candidate, Kind, narrow

_GAP = 40
"""The most characters between two cards of one list."""
_JOINTS = (".", "-", "'", "’")
_LIGHTS = ("major-18", "major-19")


class Grade(IntEnum):
    """What a name is worth by itself."""

    NEVER = 0
    IN_COMPANY = 1
    """Only in a list with cards that are sure."""
    IF_KNOWN = 2
    """Also if the same card is surely named elsewhere in the leaf, or another just before."""
    SURE = 3


def accepted(candidates: Sequence[Candidate]) -> Iterator[Candidate]:
    """Those meant as cards, in order."""
    grades = [grade(each) for each in candidates]
    _lift_by_company(candidates, grades)
    graded = list(zip(candidates, grades, strict=True))
    sure = [each for each, worth in graded if worth is Grade.SURE]
    known = {each.key for each in sure}
    coded = any(each.kind is Kind.CODE for each in sure)
    last = -REACH
    for each, worth in graded:
        at_hand = coded if each.kind is Kind.CODE else each.start - last < REACH
        if worth is Grade.SURE or (worth is Grade.IF_KNOWN and (at_hand or each.key in known)):
            yield each
            last = each.end


def grade(each: Candidate) -> Grade:
    """What the name is worth without its neighbours."""
    if each.kind is Kind.CHOSEN:
        return Grade.SURE
    if _in_an_address(each):
        return Grade.NEVER
    if each.kind is Kind.NUMERAL:
        return _numeral(each)
    if each.kind is Kind.RANKED:
        return _ranked(each)
    if each.kind is Kind.CODE:
        return _code(each)
    return _title(each)


def _in_an_address(each: Candidate) -> bool:
    """Part of a file name, an e-mail address or a hyphened word."""
    text, start = each.text, each.start
    last, first = text[max(start - 1, 0) : start], each.after[:2]
    if last in ("@", "\\") or first[:1] in ("@", "\\") or (last == "/" and not each.capital):
        return True
    if last == "-" and start > 1 and text[start - 2].isalnum():
        return True
    return first[:1] in _JOINTS and first[1:].isalnum() and first not in ("'s", "’s")


def _ranked(each: Candidate) -> Grade:
    if each.surface[0].isdigit() and _counted(each):
        return Grade.NEVER
    sketched = each.surface.startswith("page") and each.words and each.words[-1] in clues.PAGES
    return Grade.IN_COMPANY if sketched else Grade.SURE


def _counted(each: Candidate) -> bool:
    """'2.3 of cups', '1/3 of cups'."""
    return each.before[-1].isdigit() or each.before[-1] in "/.,:+-"


def _title(each: Candidate) -> Grade:
    if not each.capital:
        return Grade.SURE if _said_as_card(each) else _small_letters(each)
    if _part_of_a_name(each) or (each.surface == "Sun" and _weekday(each)):
        return Grade.NEVER
    if each.key in _LIGHTS and _in_the_sky(each):
        return Grade.SURE if _said_as_card(each) else Grade.NEVER
    if each.article or each.kind is Kind.PHRASE or not each.opens or _said_as_card(each):
        return Grade.SURE
    return _opening_word(each)


def _said_as_card(each: Candidate) -> bool:
    after = each.after
    turned = clues.TURNED if each.capital else clues.TURNED_PLAINLY
    if turned.match(after) or clues.CARD_AFTER.match(after) or clues.PLACED.match(after):
        return True
    stops = clues.STOP.match(after)
    if not stops and not each.capital:
        return False
    cues = each.cues
    return _card_before(cues) or (
        _drawn_before(cues) and clues.NOTHING_MORE.match(after) is not None
    )


def _card_before(cues: Sequence[str]) -> bool:
    """'my card for the month is' and the like."""
    rest = next((word for word in reversed(cues) if word not in clues.AFTER_CARD_WORDS), "")
    return rest in clues.CARD_WORDS


def _drawn_before(cues: Sequence[str]) -> bool:
    return bool(cues) and (cues[-1] in clues.DRAWN or " ".join(cues[-2:]) in clues.DRAWN)


def _small_letters(each: Candidate) -> Grade:
    if each.kind is Kind.PHRASE and not each.after.startswith((" of ", " of\n")):
        return Grade.SURE
    return Grade.IN_COMPANY if clues.STOP.match(each.after) else Grade.NEVER


def _in_the_sky(each: Candidate) -> bool:
    cues = each.cues
    if cues and cues[-1] in ("to", "with"):
        cues.pop()
    return bool(clues.IN_THE_SKY.match(each.after)) or (bool(cues) and cues[-1] in clues.SKY_BEFORE)


def _weekday(each: Candidate) -> bool:
    """'Sun 3 May', 'Sat and Sun'."""
    dated = each.after[:1] in (" ", "/") and each.after[1:2].isdigit()
    return dated or each.before.rstrip(" ,/-–\n").endswith(("Sat", "Sat and", "Mon", "Fri"))


def _opening_word(each: Candidate) -> Grade:
    """A capital letter that any first word has: 'Justice was done'."""
    if clues.TABLE_TALK.match(each.after) or clues.NOTHING_MORE.match(each.after):
        return Grade.SURE
    stops = clues.STOP.match(each.after)
    if stops and clues.ITEM.search(each.before):
        return Grade.SURE
    return Grade.IF_KNOWN if stops or clues.ITS_OWN.match(each.after) else Grade.IN_COMPANY


def _part_of_a_name(each: Candidate) -> bool:
    """'Tower Steps', 'Evening Star', 'Empress of Orrin', 'a girl called Justice'."""
    follower = each.next
    if follower[:1].isupper() and follower.lower() not in clues.APART:
        return True
    if follower in clues.CREATURES or clues.OF_SOMEWHERE.match(each.after):
        return True
    cues = each.cues
    if _called_before(cues):
        return True
    return not each.article and (_named_before(each) or _of_before(cues))


def _called_before(cues: Sequence[str]) -> bool:
    if cues and cues[-1] in clues.PRONOUNS:
        return cues[-2:-1] != [] and (cues[-2] in clues.CALLS or cues[-2] in clues.CALLED)
    return bool(cues) and cues[-1] in clues.CALLED and cues[-2:-1] != ["card"]


def _named_before(each: Candidate) -> bool:
    word = each.previous
    if not word[:1].isupper() or len(word) == 1:
        return False
    return word.lower() in clues.NAMING or not each.previous_opens


def _of_before(cues: Sequence[str]) -> bool:
    return len(cues) > 1 and cues[-1] == "of" and cues[-2] in clues.NAMING_OF


def _numeral(each: Candidate) -> Grade:
    if not each.surface.isupper():
        return Grade.NEVER
    if len(each.surface) == 1:
        return Grade.IN_COMPANY
    before = each.previous
    if before.lower() in clues.LABELS or each.next in clues.NUMBERED_BY:
        return Grade.NEVER
    of_a_king = before[:1].isupper() and before.lower() not in clues.OPENERS
    return Grade.IN_COMPANY if of_a_king else Grade.SURE


def _code(each: Candidate) -> Grade:
    if _counted(each):
        return Grade.NEVER
    if clues.TURNED.match(each.after) or _drawn_before(each.cues):
        return Grade.SURE
    if clues.MEASURED.match(each.after):
        return Grade.NEVER
    if not each.words or each.words[-1].lower() not in clues.MEASURES:
        if _clear_code(each.surface):
            return Grade.SURE
        if each.surface[0].isdigit() and each.surface.isalnum() and each.surface.islower():
            return Grade.IF_KNOWN
    return Grade.IN_COMPANY if clues.STOP.match(each.after) else Grade.NEVER


def _clear_code(surface: str) -> bool:
    """Codes that are hardly ever anything else: '3w', 'knw'."""
    return surface[-1] == "w" and (surface[0].isdigit() or surface[:2] == "kn")


def _lift_by_company(candidates: Sequence[Candidate], grades: list[Grade]) -> None:
    """Raise what stands in one list with a sure card to sure."""
    for run in _runs(candidates, grades):
        if any(grades[at] is Grade.SURE for at in run) or _list_of_codes(candidates, run):
            for at in run:
                if grades[at] is not Grade.SURE and _fits(candidates, run, at):
                    grades[at] = Grade.SURE


def _runs(candidates: Sequence[Candidate], grades: Sequence[Grade]) -> Iterator[list[int]]:
    """Places of candidates that follow each other as in a list; sure pairs need no look."""
    run: list[int] = []
    for at, each in enumerate(candidates):
        if grades[at] is Grade.NEVER:
            continue
        settled = run and grades[at] is grades[run[-1]] is Grade.SURE
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
    """Two codes or more that are not sums of money or time: not all of one suit."""
    suits = {candidates[at].key[:3] for at in run if candidates[at].kind is Kind.CODE}
    return len(suits) > 1


def _fits(candidates: Sequence[Candidate], run: Sequence[int], at: int) -> bool:
    """Whether company is enough: small letters that end one line do not belong to the next."""
    each = candidates[at]
    if each.kind is Kind.NUMERAL:
        return _numeral_fits(each, [candidates[other] for other in run if abs(other - at) == 1])
    if each.kind is Kind.WORD and not each.capital and not each.opens:
        return at != run[0] or "\n" not in each.text[each.end : candidates[run[-1]].start]
    return True


def _numeral_fits(each: Candidate, beside: Sequence[Candidate]) -> bool:
    """A doubtful numeral needs its own title beside it; a single letter, another numeral."""
    if any(other.key == each.key for other in beside):
        return True
    return len(each.surface) == 1 and any(
        other.kind is Kind.NUMERAL and (each.surface != "I" or other.start > each.start)
        for other in beside
    )
