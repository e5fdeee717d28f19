"""Word lists and expressions for what stands around a card's name; no decisions.

Expressions are matched where a name ends, on a short stretch, so none can run away.
Which words tell is common practice, tried on the labelled corpus of the tests.
"""

import re

_PIECE = re.IGNORECASE | re.VERBOSE
_REVERSAL = r"(?:reversed|upright|inverted|upside\ down|on\ (?:its|his|her)\ head|rev\.?|rx|(?-i:r|R(?!\.[ ]\w)))"

TURNED = re.compile(
    rf"""[*_]*[,;:]?[ \n]\(?{_REVERSAL}(?![\w'’])
    (?![ \n](?:the|an?|its|his|her|my|our|your|their|this|that|it|into|out|itself|course)\b)""",
    _PIECE,
)
"""'reversed', 'upright', 'r' and their like, said of the card: 'reversed the van' is not."""

TURNED_PLAINLY = re.compile(
    rf"""{TURNED.pattern}(?=[*_]*\)?(?:$|[ ]?[.,;:!?)\]|/\n—–]|[ \n](?:and|or|in|at|again|then|
    here|means?|may|might|cross\w*|beneath|above|below|beside|behind|ahead|as|is|was|but|next|so|
    came|comes|fell|falls|turn(?:s|ed)|appear(?:s|ed)?|has|had|will|would|could|can|for|on|when|
    this|today|tonight|yesterday|twice|says|said|tells|looks|feels|does
    )\b))""",
    _PIECE,
)
"""The same with nothing of weight after it; asked of small letters."""

CARD_AFTER = re.compile(r"[*_]*(?:['’]s?)?[ \n]cards?\b", _PIECE)

PLACED = re.compile(
    r"""(?:,|[ \n]\w+){0,2}[ \n](?:in|at)[ \n](?:(?:place|position)\b|(?:the|my|her|his)[ \n]
    (?:second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|eleventh|twelfth|last|final|next|
    \d{1,2}th|outcome|middle|hopes?)[ \n](?:place|position|house)\b)""",
    _PIECE,
)
"""'in place 5', 'lay in the tenth place'; 'in the first place' is too often said of anything."""

IN_THE_PACK = re.compile(
    r"""[*_]*[ \n](?:(?:back|up|down|last|first|again|out)[ \n]){0,2}(?:in|into|from|of|on|out[ \n]of)[ \n](?:(?:the|my|her|his|our|your|this|that|any|each|
    every|either|old|older|new|other|one)[ \n]){1,3}(?:packs?|decks?|draws?|spreads?|readings?|layouts?)\b""",
    _PIECE,
)
"""'the moon in the pack'."""

WHEN_DRAWN = re.compile(
    r"""[*_]*,?[ \n](?:(?:this|that)[ \n](?:morning|evening|afternoon|night|time|week|month)|today|
    tonight|yesterday|last[ \n]night|again|twice|(?:on[ \n])?(?:mon|tues|wednes|thurs|fri|satur|sun)day|
    for[ \n](?:it|myself|today|tonight|tomorrow|(?:the|my|this|next|last)[ \n](?:day|week|month|year|
    question|card|past|present|future|outcome|advice|(?:mon|tues|wednes|thurs|fri|satur|sun)day)|
    (?:mon|tues|wednes|thurs|fri|satur|sun)day)|and[ \n]then|
    before[ \n](?:bed|work|breakfast|supper|dinner)|at[ \n](?:noon|midnight|bedtime|dawn|breakfast)|
    (?:when|whenever)[ \n](?:i|we|she|he|you|they)[ \n](?:ask|shuffl|cut|read|drew|draw|laid))(?![^\W_])""",
    _PIECE,
)
"""After 'I drew the hermit': nothing more is said of it than when or what for."""

WHEN_ASKED = re.compile(
    r"""[*_]*,?[ \n](?:when|whenever|if|each[ \n]time|every[ \n]time)[ \n](?:i|we|she|he|you|they)[ \n]
    (?:ask|draw|drew|read|lay|laid|shuffl|cut)""",
    _PIECE,
)

A_CARD = re.compile(
    r"""[*_]*[ \n](?:as|for|is|was)[ \n](?:the|a|an|my|her|his|your|our)[ \n](?:\w+[ \n]){0,2}cards?\b""", _PIECE
)
"""'the world as my last card'."""

CARD_WAS = re.compile(
    r"\bcards?\b[^.!?;:\n]{0,40}[ \n](?:was|is|were|came|said)[ \n](?:the[ \n])?$", re.IGNORECASE
)
"""'turned the top card, and it was'."""

ASKED_GOT = re.compile(
    r"\bask(?:ed|ing)?\b[^.!?;:\n]{0,60}[ \n](?:got|get|had|have|given)[ \n](?:the[ \n])?$", re.IGNORECASE
)
"""'asked about the roof and got'."""

DRAWN_EARLIER = re.compile(
    r"\b(?:drew|drawn|pulled|dealt|laid|turned[ \n](?:up|over))\b[^.!?;:\n]{3,70}$", re.IGNORECASE
)
"""In the same sentence."""

AMONG_THEM = re.compile(
    r"""[ \n](?:between|beside|beneath|above|below|across|over|under|behind|crossing|on[ \n]top[ \n]of)[ \n]
    (?:it|them|both|the[ \n]two)\b""",
    _PIECE,
)

SAID_OF_CARDS = re.compile(
    "|".join(f"(?:{each.pattern})" for each in (CARD_AFTER, PLACED, IN_THE_PACK, A_CARD)), _PIECE
)
"""Any of these four; one look is quicker than four."""

AGAIN = re.compile(r"[*_]*,?[ \n]again[ ]*[.!?]", _PIECE)

ON_SHOW = re.compile(
    r"""[ \n](?:(?:is|was|still|now|back|up|propped)[ \n]){0,3}(?:on|against|under|beside)[ \n](?:the|my|her|his|our)[ \n]
    (?:sill|windowsill|dresser|desk|shelf|mantel\w*|altar|nightstand|bedside|fridge|mirror|pillow|cloth)\b""",
    _PIECE,
)
"""A card put up where it is seen."""

AT_A_SHOW = re.compile(
    r"""[ \n](?:at|in)[ \n](?:the|an?|our|some)[ \n](?:\w+[ \n])?(?:fair|opera|f[eê]te|carnival|pageant|circus|play|
    theatre|temple|museum|panto\w*|procession|costume)\b|[ \n]on[ \n](?:the|a)[ \n](?:pier|stage|float)\b""",
    _PIECE,
)
"""Somebody or something in costume, no card."""

IN_A_ROW = re.compile(
    r"""[*_]*[ \n]in[ \n](?:a|one|two|three|four|the[ \n]same)[ \n](?:row|days?|weeks?|months?|fortnight|spread|
    reading|draw|line|hand|night|year)\b""",
    _PIECE,
)
"""'two Towers in a week'."""

LETTER_FOR = re.compile(r"(?<!\w)([A-Z]) for (?:the )?$")
"""'D for the devil'."""

TABLE_TALK = re.compile(
    r"""[*_]*(?:[ ]*:|[ ][–—]|,?[ \n](?:
    again\b|cross(?:es|ing|ed)\b|cover(?:s|ing|ed)\b|beneath\b|above\b|below\b|behind\b|ahead\b|
    under\b|over\b|beside\b|next[ \n]to\b|opposite\b|upright\b|followed[ \n]by\b|
    on[ \n](?:the|my|her|his)[ \n](?:left|right|table)\b|
    at[ \n]the[ \n](?:root|foot|top|bottom|end|head|centre|heart)\b|
    in[ \n]the[ \n](?:middle|centre|past|future|present)\b|to[ \n]the[ \n](?:left|right)\b|
    turn(?:s|ed|ing)?[ \n]up\b|(?:never|always|often)[ \n]turn|c(?:o|a)mes?[ \n](?:up|about)\b|
    appear(?:s|ed)?\b|f(?:a|e)lls?[ \n](?:in|out|on|next|last|first|across|beside)\b|
    asks\b|says\b|means\b|shows\b|stands\b|sits\b|speaks\b|belongs\b|shares?[ \n]|looks\b|
    has[ \n](?:the|a|an|no|both|two|her|his|its)\b|is[ \n](?:the|a|my)[ \n](?:\w+[ \n])?card\b|
    is[ \n](?:the|a)[ \n](?:\w+[ \n])?(?:woman|lady|girl|man|boy|child|youth|figure|skeleton|lion)\b|
    as[ \n](?:the|my|a|an)[ \n](?:outcome|advice|answer|card)\b|
    (?:i|we)[ \n](?:like|love|drew|had|read|did)\b))""",
    _PIECE,
)
"""What one says of a card and seldom of the thing: enough after a name that opens a sentence."""

NOTHING_MORE = re.compile(r"[*_'’\"”)]*[ ]*(?:[.?!…]|\||\n[ ]*(?:\n|[-*+|#>]|\d+[.)])|$)", _PIECE)
"""The sentence, line or cell ends here."""

CARD_LEAD = re.compile(r"\bcards?\b[^.!?:;\n]{0,30}:[ *_]*(?:the )?$", re.IGNORECASE)
"""'Card for May:'."""

DRAWN_LIST = re.compile(
    r"\b(?:drew|drawn|pulled|dealt|laid)\b[^.!?:;\n]{0,40}:[ *_]*(?:the )?$", re.IGNORECASE
)
"""'Drew for it:'."""

STOP = re.compile(r"[*_'’\"”]*[ ]*(?:[.,;:?!…)\]|/+\n—–]|$)", _PIECE)

ITS_OWN = re.compile(r"['’]s?[ \n][a-z]")
"""'Death's horse'."""

NOBODYS = re.compile(r"['’]s?[ \n](?:door|bed|bench|peace|court|doorstep|hand|own|sake)\b", _PIECE)
"""'death's door'."""

OF_SOMEWHERE = re.compile(
    r"(?:['’]s?)?[ \n](?:of|among)[ \n](?:the[ \n])?[A-Z]|['’]s?[ \n][A-Z][a-z]"
    r"|[\"”'’*_]*[ \n](?:concerto|sonata|symphony|quartet|waltz|overture|march)\b"
)
"""'Empress of Orrin', 'Star of the Sea', 'Devil's Spoon', 'the "Emperor" concerto'."""

_SIGNS = "aries taurus gemini cancer leo virgo libra scorpio sagittarius capricorn aquarius pisces"
_PLANETS = "mercury venus mars jupiter saturn uranus neptune pluto"
_ASPECTS = "square trine sextile conjunct opposite opposing conjunction"

IN_THE_SKY = re.compile(
    rf"""[ \n](?:(?:(?:\w+[ \n]){{0,2}}(?:in|into|enters|entering|leaves|leaving)[ \n])?
    (?:{_SIGNS.replace(" ", "|")})\b
    |(?:{_ASPECTS.replace(" ", "|")})[ \n](?:with[ \n])?(?:{_PLANETS.replace(" ", "|")})\b
    |(?:waxing|waning|rising|rises|rose|setting|sets?|shone|shines|shining|went[ \n]down|came[ \n]out|
    was[ \n]shining|came[ \n]up[ \n](?:over|behind|out|through|red|late|early))\b
    |(?:is|was|were|be|hung|hangs|had[ \n]been)[ \n](?:(?:nearly|almost|not|already|very|still|just|so|at|
    properly)[ \n]){{0,2}}(?:full|new|gibbous|up|down|high|low|bright|hot|warm|out|setting|rising)\b
    |signs?\b)""",
    _PIECE,
)
"""The lights in the sky, not the trumps: 'the Moon in Cancer', 'the Sun trine Mars'."""

MEASURED = re.compile(
    r"""[. ]?[ \n]?(?:ago|later|old|left|bulbs?|lamps?|led|watts?|a|per|each|of|or[ \n]so|off|pm|am|
    for|since|until|till|on[ \n]the|in[ \n]change|wind|and[ \n]a[ \n]half|pieces?|coins?|to|more|less|
    (?:is|was)[ \n](?:(?:not|never|too)[ \n])?(?:enough|plenty|much|little)|\d+d)\b|[%°]""",
    _PIECE,
)
"""'3w ago', '5p a pound', '10s on the timer'."""

BETWEEN = re.compile(
    rf"""[*_'’"”]*(?:[ ]\(?{_REVERSAL}\)?)?[*_'’"”]*
    (?:[ ]?[,;/+&→>|][ \n]?|[ ][–—-][ ]|[ \n]|
    [ ]?\n{{1,2}}[ ]?(?:(?:[-*+>]|\d{{1,2}}[.):])[ ])?(?:\[[ xX]\][ ])?|
    [.;]?[ \n](?:[-*][ ])?[a-zA-Z][\w'’ ]{{1,28}}:[ ])
    (?:(?:and|then|with|or|plus|next[ ]to|beside|crossed[ ]by|covered[ ]by|and[ ]then|followed[ ]by|
    alongside|opposite)
    [ \n])?(?:the[ \n]|a[ \n])?(?:\d{{1,2}}[:.)][ ])?[*_'‘"“(]*""",
    _PIECE,
)
"""Between two cards of one list: ', ', ' r; ', ' and the ', a line end with its list mark.

Also 'What crosses: ' of a list that says what each card is for.
"""

OPENING = re.compile(
    r"""(?:[.!?…][\"'’”)\]]*\s|\n\n[ ]?|\n[ \t]*(?:[-*+>\#|]+|\d{1,3}[.):])[ ](?:\[[ xX]\][ ])?
    |\|[ ]?|[.:,;!?—–][ \n]?(?=['"‘“])|(?:^|\n)[^\n]{0,45}\n)['\"‘“(*_~]*$""",
    re.VERBOSE,
)
"""Searched at the end of what is before: a sentence, short line, list item or cell opens here."""

ITEM = re.compile(r"(?:\n[ \t]*(?:[-*+]|\d{1,3}[.)])[ ](?:\[[ xX]\][ ])?|\|[ ]?)[*_]*$")
"""The same of a list item or a cell alone."""

NEXT_WORD = re.compile(r"[*_]*[ \n][*_]*([^\W_][\w'’]*)")
WIDE = re.compile(r"\s\s+")
NUMERAL_AHEAD = re.compile(
    r"\W{1,4}(?:and )?(?:[IVX]{2,5}\b|[A-Z][a-z])|(?: to |–)(?:[VX]|[IVX]{2,5})\b"
)
RANGE_AHEAD = re.compile(r"[*_]*(?: to (?:the )?|–)[*_]*[IVX]{1,5}(?![\w'’])")
RANGE_BEHIND = re.compile(r"\b[IVX]{1,5}[*_]*(?: to (?:the )?|–)[*_]*$")
MORE_NUMERALS = re.compile(r"[ivxlc]*[.,;]?|and|or|to|&|[-–]")
"""What may stand between a label and a numeral: 'volumes II and III'."""

CITED = re.compile(r"[.,]?[ ](?:(?:no|pp?|ch)[.][ ]?)?\d+(?:[-–]\d+)?(?:[.,;)\n]|$)", _PIECE)
"""'III, 37'."""

HEADING_AFTER = re.compile(r"[.)][ \n][^\W_]")
"""'II. Before the reading'."""

SCORED = re.compile(r"[-–—:.,/%°]\d|[%°]|[ ]?[-–—][ ]?\d")
TRICK = re.compile(r"[ \n]tricks?\b")
COUNTED_ON = re.compile(
    r"[.,:/x×%-]?\d|[ ]?(?:[-–—/x×+]|to|or|and|of|in|per|for|each)[ ]?\d|[ ](?:of|per|each)\b"
)
COURT_OF = re.compile(r"(?:[qQ]|[kK]n|[kK]t|[pP]g)\s+of\s+\w")
ACE_AFTER = re.compile(
    r"[ \n](?:(?!th|being|having|during|follow|noth|anyth|someth|everyth|even|morn)\w{2,}ing|again|today"
    r"|tonight|yesterday|then)\b"
)
"""After 'drew as': seldom said after the little word."""


def _set(words: str) -> frozenset[str]:
    return frozenset(words.split())


CARD_WORDS = _set("card card: cards cards: trump major")
AFTER_CARD_WORDS = _set(
    "of for the is was called my today today: again again: day day: week week: month month: morning"
    " night evening noon year year: this next last tomorrow tonight came out to be as has been"
    " monday tuesday wednesday thursday friday saturday sunday january february march april may june"
    " july august september october november december"
)
DRAWN = _set("drew drew: drawn drawn: draw draw: pulled pulled: dealt dealt:") | {
    "crossed by",
    "covered by",
    "turned up",
    "turned over",
}
FOR_WHOM = _set("me him her us them you myself")
"""'drew me the hermit'."""
GETS = _set("get gets getting got draw draws drawing drew pull pulls pulling see seeing turn turning")
HAPPENED = _set("got get had have given was is were came said")
LOOKS = (["look"], ["looked"], ["looking"], ["stare"], ["stared"], ["staring"], ["laughed"], ["gazed"])
ALWAYS = _set("always keep keeps kept still forever")
"""'I always get the lovers'."""
SEVERAL = (["two"], ["three"], ["four"], ["five"], ["both"], ["several"])
NO_COMMON_WORD = _set("hierophant")
ARTICLES = _set("a an the")
PRONOUNS = _set("it him her them")
CALLED = _set("called named christened nicknamed spelt")
CALLS = _set("call calls calling name names")
"""The same, if 'her' or the like follows."""
SKY_BEFORE = _set("full new half waxing waning gibbous crescent thin blue harvest hunter's") | _set(_ASPECTS)
PAGES = _set("a an one each every another whole half last first next second third this")
"""'a page of cups' in a sketch pad."""
MEASURES = _set(
    "last past next about for every within after only some over under cost costs paid pay a is was"
    " than by from to at of took takes another another's £ $ €"
)
CREATURES = _set(
    "moth moths butterfly butterflies penguin penguins dragonfly crab crabs beetle"
)
NUMBERED_BY = _set(
    "century centuries drip drips line lines fluids antibiotics bag bags pole pump edition form"
    " corps"
)

NAMING = _set(
    "mr mrs miss ms dr sir dame lady lord saint st captain canon father sister brother mother"
    " uncle aunt chief professor lieutenant sergeant king queen prince princess pope north south"
    " east west evening morning new full half old blue pole harvest great little upper lower april"
)
"""Before a capital word these make it part of a proper name, even where a sentence opens."""

NAMING_OF = _set("tower angel court house day lord king queen palace book temple tree")
"""'Tower of Strength', 'Court of Justice'."""

LABELS = _set(
    "act appendix article band battle book box canto catalogue chapter chapters class clause column"
    " cone course day diagram drawing drum exercise fig figure file form grade group guide house"
    " issue item king lecture leaf lesson letter level line lot meeting month no nos note number"
    " page paper para paragraph part parts phase plate point pope psalm psalms question report room"
    " row scene section series session sheet stage step table tab term type unit units vol volume"
    " volumes war week year century verse world mark model channel factor ward bay nerve folio quire gathering signature tome proof parcel"
    " division company squadron category class cap pl vol fol"
)
"""Before a numeral these say what it counts."""

SHORT_LABELS = _set(
    "vol vols ch chap chaps cap pt pts sec sect no nos fig figs pl pls bk bks lib fol ff art ps pss p"
    " pp op para par app tab"
)
"""The same cut short, with a point."""

OWNERS = _set("a an his her their your its our")
SPOKEN = _set("says said saying marked stamped lettered scrawled dated")
COMMON_SUITS = ("cups", "coins", "hearts", "clubs", "spades", "diamonds", "discs", "disks")
"""Suits that are words for much else, before a number."""

INN_PREPOSITIONS = _set("at to from in of behind outside opposite near")
INN_WORDS = _set(
    "inn pub tavern alehouse landlord landlady host hostess ostler pint pints ale beer cider bar"
    " supper supped dinner dined lunch lunched breakfast drink drinks drank drinking lodged lodging"
    " lodgings slept stayed staying stopped met meeting room rooms bed yard taproom parlour darts"
    " coach carrier put sign quiz"
)
"""'supper at the Star'."""
_DAY = r"(?:mon|tues?|weds?|wednes|thu(?:rs?)?|fri|satu?r?|sat)(?:day)?"
OTHER_DAY = re.compile(rf"\b{_DAY}\b[^.!?:\n]{{0,14}}$", re.IGNORECASE)
"""Before 'Sun': 'Saturday yes, '."""
TIME_OF_DAY = re.compile(r",?[ ](?:off|morning|night|evening|afternoon|lunch|a\.?m|p\.?m)\b", _PIECE)
ON_A_DAY = (["on"], ["by"], ["till"], ["until"], ["next"], ["last"], ["every"])
TITLE_WORDS = _set(
    "fool magician high priestess empress emperor hierophant lovers chariot strength hermit wheel"
    " justice hanged death temperance devil tower star moon sun judgement judgment world ace two"
    " three four five six seven eight nine ten page knight queen king"
)
AND_PARTNER = re.compile(r" (?:and|&) (?:the )?([A-Z][a-z]+)")

APART = _set(
    "i reversed upright rx r monday tuesday wednesday thursday friday saturday sunday january"
    " february march april may june july august september october november december mon tue wed thu"
    " fri sat fire water air earth"
) | _set(f"{_SIGNS} {_PLANETS}")
"""Words written with a capital that do not make the word before them part of a name."""

OPENERS = _set(
    "after again against also and another as at before below beside between both but by cut dealt"
    " drew even for from got had here if in is it laid like major my near of on once only or over"
    " pulled read reversed see so still that the then this though today tonight trump turned under"
    " when where while why with yesterday lay laid put place set turn took take compare find found"
    " get seeing hid kept love like liked meet met drawing pulling first then next finally maybe"
    " perhaps because since so not just even yes no now later soon what who whose which"
)
"""Words that may open a sentence before a numeral; any other could be a king's name."""
