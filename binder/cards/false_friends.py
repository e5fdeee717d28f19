"""A title written with a capital that is no card: a place, an inn, a ship, a play, a saying."""

import re
from collections.abc import Sequence

from binder.cards import clues
from binder.cards.around import OF_CARDS, Candidate, Kind

_PIECE = re.IGNORECASE | re.VERBOSE
_LIGHTS = ("major-18", "major-19")
_PAPERS = ("major-17", "major-19", "major-21")

_ON_STAGE = re.compile(
    r"""[ \n](?:(?:is|was|were|will[ \n]be)[ \n])?(?:(?:now[ \n])?playing[ \n]at\b
    |(?:at|in)[ \n](?:(?:the|an?|our|some|his|her|my|this|last|next|that)(?:[ \n]year['’]s)?[ \n])
    (?:\w+[ \n])?(?:fair|opera|f[eê]te|carnival|pageant|circus|play|theatre|panto\w*|procession|
    moralit\w+|mummers|costume|ballet|film|musical|nativity)\b)
    |[ \n](?:(?:is|was)[ \n])?on[ \n](?:the|a)[ \n](?:pier|stage|float|hill|radio|telly|
    wireless|big[ \n]screen)\b""",
    _PIECE,
)
_AT_SEA = re.compile(
    r"""[ \n](?:(?:was|is|had[ \n]been)[ \n](?:\w+[ \n])?(?:built|launched|moored|rigged|docked|
    refitted|scuttled|laid[ \n]up)|sailed|docked|moored|sank|foundered|
    put[ \n](?:to[ \n]sea|out[ \n]from|into[ \n](?:port|harbour)))\b""",
    _PIECE,
)
_SAYING = re.compile(
    r"""[ \n](?:(?:is|was|lies?)[ \n]in[ \n]the[ \n]detail|takes?[ \n]the[ \n]hindmost|
    (?:has|had|have)?[ \n]?(?:smiled?|smiles|favou?rs|favou?red|frown\w*)[ \n](?:up)?on\b|
    favou?rs[ \n]the|(?:must|should|will|has[ \n]to|needs?[ \n]to)[ \n]be[ \n](?:seen|done|served)|
    (?:is|was|has[ \n]been|had[ \n]been|be)[ \n](?:\w+[ \n])?(?:done|served|denied|delayed|
    reserved|blind|her[ \n]witness|deferred)\b|comes?[ \n]to[ \n](?:us[ \n]all|everyone|all)\b|
    only[ \n]knows|knows[ \n](?:why|what|how|where)\b|and[ \n]taxes|
    (?:has|had|is)[ \n](?:a|its)[ \n]way[ \n]of|to[ \n]pay\b)""",
    _PIECE,
)
"""What is said in a saying, and of no card."""

_OF_ANOTHER = re.compile(
    r"""[*_]*[ \n]of[ \n](?!course\b|(?:\w+['’]?s?[ \n]){0,3}(?:packs?|decks?|spreads?|
    readings?|cards?|
    draws?|layouts?|suits?|trumps?|majors?|arcana|set|day|week|month|year|three|four|two|pair|lot|
    them|these|those|mine|hers|his|yours|ours)\b)""",
    _PIECE,
)
"""'the Star of the show'; a card is none of anything but its pack and its day."""

_IN_A_TOWN = re.compile(r",[ ](?:[A-Z][a-z]+|[A-Z]{2})[,.;)]")
"""'in Temperance, Kansas,'."""

_IN_A_TITLE = re.compile(
    r"""[ \n](?:and|of|in|on|with|for|to|at)[ \n](?:the[ \n]|an?[ \n])?[A-Z]
    |[^\n"”’]{0,12}["”’][,]?[ \n](?:is|was|by|at|on|again|opens|ends)[ \n](?:an?|
    the)[ \n](?:\w+[ \n])?
    (?:novel|film|book|poem|song|painting|play|opera|chapter|episode|track|album|carol|hymn|
    ballad|ballet|story|picture|musical)\b""",
    re.VERBOSE,
)
"""After an opening quote: '"Death and the Maiden"', '"The Tower" is a novel'."""

_IN_A_PLAY = re.compile(
    r"\b[Ii]n (?:the|a|an|our|my|this|that) (?:\w+ )?(?:play|film|opera|ballet|panto\w*|novel|"
    r"pageant|"
    r"musical|fable)\b[^.!?\n]{0,40}$"
)
_DREAMT_OR_SET = re.compile(
    r"[ \n]in[ \n](?:(?:a|my|the|that|his|her)[ \n](?:\w+[ \n])?dream|([A-Z][a-z]+)(?!['’a-z]))"
)
"""'I met Death in a dream', 'Death in Venice'."""
_SOMEBODY = frozenset({"i", "he", "she", "you", "we", "who"})
_WAS = frozenset({"was", "am", "is", "were", "be"})
_SIGNED = ("--", "-- ")
"""Before who said it."""
_SENTENCE = re.compile(r"[.!?;]\s")
_OTHERS_OWN = re.compile(
    r"""['’]s?[ \n](?:errand|gold|advocate|food|hut|knot|new[ \n]clothes|paradise|mate|luck|
    bargain|work|
    cave|lane|day|hour|spite|share|playground|dozen|door|bed|court|sake|tattoo)\b""",
    _PIECE,
)
"""'a Fool's errand'."""

_TWO_NAMES = re.compile(r"[ ](?:and|&)[ ](?:the[ ])?([A-Z][a-z]+)(?=[ ](?!says|said)[a-z]|[.,;)])")
_SHUT = re.compile(
    r"[^.!?\n]{0,40}\b(?:clos(?:ed?|ing)|shut|open(?:ed|s)?|serv(?:ed|es)|full of|do food|"
    r"crowded)\b"
)
_ABOARD = frozenset({"aboard", "captain", "skipper", "steamer", "schooner", "trawler", "ferry"})
_BOUGHT = frozenset({"bought", "buy", "buys", "buying", "delivers", "delivered"})
_READS = frozenset({"read", "reads", "reading"})
_WHERE_READ = re.compile(
    r"[ ](?:at|on|over)[ ](?:the|my|his|her|a)[ ](?:\w+)|[ ]over[ ](?:breakfast|lunch|tea|coffee)"
)
_ACTED = frozenset({"played", "plays", "playing", "acted", "acting", "starred"})
_THE_LIGHT = ("light of", "phases of", "phase of", "rays of", "risings of", "face of", "eclipse of")
_PLACES = frozenset(
    {"position", "place", "house", "reverse", "cups", "wands", "swords", "pentacles", "coins"}
)
_WHERE = frozenset({"in", "near", "from", "to", "at"})


def part_of_a_name(each: Candidate) -> bool:
    """'Tower Steps', 'Evening Star', 'Empress of Orrin', 'a girl called Justice'."""
    follower = each.next
    if follower[:1].isupper() and follower.lower() not in clues.APART:
        return True
    if follower in clues.FELLOWS or clues.OF_SOMEWHERE.match(each.after) or _an_inn(each):
        return True
    cues = each.cues
    if _called_before(cues) or _of_this_world(each):
        return True
    if each.article:
        return False
    if each.before.endswith(_SIGNED):
        return True
    related = bool(cues) and cues[-1] in clues.RELATIVES
    return related or _named_before(each) or _of_before(cues)


def _an_inn(each: Candidate) -> bool:
    """'supper at the Star', 'in the Sun and Anchor'."""
    cues = each.cues
    if not each.article or not cues:
        return False
    if _of_two_names(each):
        return True
    if cues[-1] not in clues.INN_PREPOSITIONS:
        return False
    if each.kind is not Kind.WORD or cues[-2:-1] in clues.LOOKS:
        return False
    if any(word.strip(".,;:(") in clues.INN_WORDS for word in cues):
        return True
    told = each.after.partition(".")[0].lower().split()[:8]
    return any(word.strip(",;:(") in clues.INN_FARE for word in told)


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


def _of_this_world(each: Candidate) -> bool:
    """On the stage, at sea, in the paper, in a saying: nothing one could turn up."""
    after, cues = each.after, each.cues
    if _ON_STAGE.match(after) or _AT_SEA.match(after) or _SAYING.match(after):
        return True
    if _OTHERS_OWN.match(after) or _told_of(each):
        return True
    if each.kind is not Kind.WORD:
        return False
    if _OF_ANOTHER.match(after) or _quoted(each):
        return True
    last = cues[-1] if cues else ""
    if last in _READS and each.key in _PAPERS and _WHERE_READ.match(after):
        return True
    if last in _ABOARD or last in _ACTED or (last in _BOUGHT and each.key in _PAPERS):
        return True
    if each.key in _LIGHTS and " ".join(cues[-2:]) in _THE_LIGHT:
        return True
    return last in _WHERE and not each.article and _IN_A_TOWN.match(after) is not None


def _told_of(each: Candidate) -> bool:
    """'I was the Devil', 'in the play the Fool sings', with no word of cards beside it."""
    cues, after = each.cues, each.after
    acted = cues[-1:] != [] and cues[-1] in _WAS and cues[-2:-1] != [] and cues[-2] in _SOMEBODY
    elsewhere = _DREAMT_OR_SET.match(after)
    if elsewhere and elsewhere[1]:
        place = elsewhere[1].lower()
        elsewhere = None if place in clues.APART | clues.TITLE_WORDS | _PLACES else elsewhere
    if not acted and not elsewhere and not _IN_A_PLAY.search(each.before):
        return False
    sentence = _SENTENCE.split(each.before)[-1] + _SENTENCE.split(after)[0]
    return OF_CARDS.search(sentence) is None


def _quoted(each: Candidate) -> bool:
    """'"Death and the Maiden"', '"The Tower" is a novel'."""
    if each.before[-1:] not in ('"', "“"):
        return False
    return _IN_A_TITLE.match(each.after) is not None


def _of_two_names(each: Candidate) -> bool:
    """'at the Sun and Anchor', 'the Wheel and the Angel had both closed'."""
    partner = _TWO_NAMES.match(each.after)
    if partner is None or partner[1].lower() in clues.TITLE_WORDS | clues.APART:
        return False
    shut = _SHUT.match(each.after[partner.end() :]) is not None
    return shut or each.cues[-1] in clues.INN_PREPOSITIONS - {"of", "in"}
