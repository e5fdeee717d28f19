"""What a numeral, a rank and suit, or the shorthand for one is worth as a card's name."""

from binder.cards import clues, number_clues
from binder.cards.around import Candidate, Grade


def numeral(each: Candidate) -> Grade:
    """'XVII', and '0' where it was drawn."""
    if each.surface == "0":
        return _nought(each)
    if not each.surface.isupper() or _counts_something(each):
        return Grade.NEVER
    if _in_a_range(each):
        return Grade.SURE
    if len(each.surface) == 1 or _heads_a_section(each) or _on_a_dial(each):
        return Grade.IN_COMPANY
    return Grade.IN_COMPANY if _owned_or_spoken(each) or _of_a_king(each) else Grade.NAMED


def _nought(each: Candidate) -> Grade:
    if number_clues.SCORED.match(each.after) or not clues.STOP.match(each.after):
        return Grade.NEVER
    return Grade.SURE if each.drawn else Grade.IN_COMPANY


def _counts_something(each: Candidate) -> bool:
    if each.next.lower() in number_clues.NUMBERED_BY or number_clues.CITED.match(each.after):
        return True
    for word in reversed(each.words):
        bare = word.strip("*_(,").lower()
        if not number_clues.MORE_NUMERALS.fullmatch(bare):
            return _labels(bare)
    return False


def _labels(word: str) -> bool:
    if word.endswith("."):
        return word[:-1] in number_clues.SHORT_LABELS
    return word in number_clues.LABELS or word.removesuffix("s") in number_clues.LABELS


def _in_a_range(each: Candidate) -> bool:
    """'I to V'."""
    if number_clues.RANGE_AHEAD.match(each.after):
        return True
    joined = each.before.endswith((" to ", " to the ", "–"))
    return joined and number_clues.RANGE_BEHIND.search(each.before) is not None


def _on_a_dial(each: Candidate) -> bool:
    """'the clock struck XII', 'XII on the old dial'."""
    if not number_clues.CLOCKS.isdisjoint(each.cues[-3:]):
        return True
    return number_clues.DIAL_AFTER.match(each.after) is not None


def _heads_a_section(each: Candidate) -> bool:
    """'II. Before the reading'."""
    return number_clues.HEADING_AFTER.match(each.after) is not None and each.opens


def _owned_or_spoken(each: Candidate) -> bool:
    """'pulled his IV out', 'says XX'."""
    word = each.words[-1].lower() if each.words else ""
    return (
        word in number_clues.OWNERS
        or word in number_clues.SPOKEN
        or (each.surface == "IV" and word == "the")
    )


def _of_a_king(each: Candidate) -> bool:
    before = each.previous
    return before[:1].isupper() and before.lower() not in number_clues.OPENERS


def ranked(each: Candidate) -> Grade:
    """'Three of Wands'."""
    if (each.surface[0].isdigit() and _counted(each)) or number_clues.TRICK.match(each.after):
        return Grade.NEVER
    return _page(each) if each.surface.startswith("page") else Grade.SURE


def _page(each: Candidate) -> Grade:
    """'a page of cups in the sketchbook', 'the page of cups'."""
    if number_clues.IN_A_BOOK.match(each.after):
        return Grade.NEVER
    sketched = each.words and each.words[-1] in number_clues.PAGES
    return Grade.IN_COMPANY if sketched else Grade.SURE


def entry(each: Candidate) -> Grade:
    """'Wands 3'."""
    if not each.surface[0].isupper() or number_clues.COUNTED_ON.match(each.after):
        return Grade.NEVER
    common = each.surface.lower().startswith(number_clues.COMMON_SUITS)
    return Grade.IF_KNOWN if common else Grade.SURE


def _counted(each: Candidate) -> bool:
    """'2.3 of cups', '1/3 of cups'."""
    return each.before[-1].isdigit() or each.before[-1] in "/.,:+-"


def code(each: Candidate) -> Grade:
    """'3w', 'Q of C'."""
    if each.surface == "as":
        return _as(each)
    if _counted(each) or _sum_or_rank(each):
        return Grade.NEVER
    if clues.TURNED.match(each.after) or each.drawn:
        return Grade.SURE
    if number_clues.MEASURED.match(each.after):
        return Grade.NEVER
    if not each.words or each.words[-1].lower() not in number_clues.MEASURES:
        if _clear(each.surface):
            return Grade.SURE
        if each.surface[0].isdigit() and each.surface.isalnum() and each.surface.islower():
            return Grade.IF_KNOWN
    return Grade.IN_COMPANY if clues.STOP.match(each.after) else Grade.NEVER


def _sum_or_rank(each: Candidate) -> bool:
    """'1st', '7s. 6d', '10s and his dinner', '3d printing'."""
    surface, after = each.surface.lower(), each.after
    if number_clues.ORDINAL.fullmatch(surface):
        return True
    if surface[-1] not in "spd" or not surface[0].isdigit() or each.drawn:
        return False
    if surface[-1] == "d" and number_clues.OLD_MONEY.search(each.before):
        return True
    if surface in ("2d", "3d") and number_clues.DIMENSIONS.match(after):
        return clues.TURNED.match(after) is None
    paid = each.cues[-1:] and each.cues[-1] in number_clues.MEASURES
    return bool(paid and number_clues.THING_AFTER.match(after))


def _as(each: Candidate) -> Grade:
    """The ace of swords, or the little word."""
    stops = clues.STOP.match(each.after) or clues.TURNED_PLAINLY.match(each.after)
    if (stops or number_clues.ACE_AFTER.match(each.after)) and each.drawn:
        return Grade.SURE
    return Grade.IN_COMPANY if stops else Grade.NEVER


def _clear(surface: str) -> bool:
    """Codes that are hardly ever anything else: '3w', 'knw', 'Q of C'."""
    if number_clues.COURT_OF.match(surface):
        return True
    begun = surface[0].isdigit() or surface[:2] == "kn"
    return begun and surface[-1] == "w" and " w" not in surface
