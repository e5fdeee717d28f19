"""Word lists and expressions for what stands around a card's name; no decisions.

Expressions are matched where a name ends, on a short stretch, so none can run away.
Which words tell is common practice, tried on the labelled corpus of the tests.
"""

import re

_PIECE = re.IGNORECASE | re.VERBOSE
_REVERSAL = (
    r"(?:reversed|upright|inverted|upside\ down|on\ (?:its|his|her)\ head|rev\.?|rx"
    r"|(?-i:r|R(?!\.[ ]\w)))"
)
_WEEKDAYS = r"(?:mon|tues|wednes|thurs|fri|satur|sun)day"
_WE = r"(?:i|we|she|he|you|they)"
_MY = r"(?:the|my|her|his|our|your)"

TURNED = re.compile(
    rf"""(?:,?[ \n](?:again|too|once[ \n]more))?[*_]*[,;:]?[ \n]\(?{_REVERSAL}(?![\w'’])
    (?![ \n](?:the|an?|its|his|her|my|our|your|their|this|that|it|into|out|itself|course)\b)""",
    _PIECE,
)
"""'reversed', 'upright', 'r' and their like, said of the card: 'reversed the van' is not."""

TURNED_PLAINLY = re.compile(
    rf"""{TURNED.pattern}(?=[*_]*\)?(?:$|[ ]?[.,;:!?)\]|/\n—–]|[ \n](?:and|or|in|at|again|then|
    here|means?|may|might|cross\w*|beneath|above|below|beside|behind|ahead|as|is|was|but|next|so|
    came|comes|fell|falls|turn(?:s|ed)|appear(?:s|ed)?|has|had|will|would|could|can|for|on|when|
    than|if|though|because|before|after|this|today|tonight|yesterday|twice|says|said|tells|
    looks|feels|does)\b))""",
    _PIECE,
)
"""The same with nothing of weight after it; asked of small letters."""

CARD_AFTER = re.compile(r"[*_]*(?:['’]s?)?[ \n]cards?\b", _PIECE)

PLACED = re.compile(
    r"""(?:,|[ \n]\w+){0,2}[ \n](?:in|at)[ \n](?:(?:place|(?:(?:that|this)[ \n])?position)\b|
    (?:the|my|her|his)[ \n](?:second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|eleventh|
    twelfth|last|final|next|\d{1,2}th|outcome|middle|hopes?)[ \n](?:place|position|house)\b)""",
    _PIECE,
)
"""'in place 5', 'lay in the tenth place'; 'in the first place' is too often said of anything."""

IN_THE_PACK = re.compile(
    rf"""[*_]*[ \n](?:(?:back|up|down|last|first|again|out|is|was|fell|dropped|jumped|flew|slid|
    slipped|missing|lost|gone)[ \n]){{0,3}}
    (?:in|into|of|out[ \n]of|(?:from|on)(?!(?:[ \n]\w+){{1,3}}[ \n]decks?\b))[ \n]
    (?:(?:{_MY}|this|that|any|each|every|either|old|older|new|other|one)[ \n]){{1,3}}
    (?:packs?|decks?|draws?|spreads?|readings?|layouts?)\b""",
    _PIECE,
)
"""'the moon in the pack'; on a deck it only shines."""

WHEN_DRAWN = re.compile(
    rf"""[*_]*,?[ \n](?:(?:this|that)[ \n](?:morning|evening|afternoon|night|time|week|month)|
    today|tonight|yesterday|last[ \n]night|again|twice|and[ \n]then|(?:on[ \n])?{_WEEKDAYS}|
    for[ \n](?:it|myself|today|tonight|tomorrow|{_WEEKDAYS}|(?:the|my|this|next|last)[ \n]
    (?:new[ \n])?(?:day|week|month|year|question|card|past|present|future|outcome|{_WEEKDAYS}))|
    before[ \n](?:bed|work|breakfast|supper|dinner)|
    at[ \n](?:noon|midnight|bedtime|dawn|breakfast)|
    (?:when|whenever)[ \n]{_WE}[ \n](?:asked|ask|shuffled|cut|read|drew|draw|laid))(?![^\W_])""",
    _PIECE,
)
"""After 'I drew the hermit': nothing more is said of it than when or what for."""

WHEN_ASKED = re.compile(
    rf"""[*_]*,?[ \n](?:when|whenever|if|each[ \n]time|every[ \n]time)[ \n]{_WE}[ \n]
    (?:ask|draw|drew|read|lay|laid|shuffl|cut)""",
    _PIECE,
)

READ_AS = re.compile(
    rf"""[*_]*(?:[ \n]reversed)?[ \n](?:mean|as)[ \n](?:
    (?:next[ \n]to|beside|crossing|under|over|after|before|with)[ \n](?:the[ \n])?[A-Za-z]+[ \n?.,]|
    (?:in|for)[ \n](?:an?|the|my|this)[ \n](?:\w+[ \n])?(?:reading|spread|position|place|draw|
    house)\b|
    (?:an?[ \n]|{_MY}[ \n])?(?:advice|outcome|obstacle|person|feelings|warning|answer|significator|
    clarifier|challenge|blockage|yes|no)\b|
    (?:upright|reversed|when[ \n](?:it|she|he)(?:[ \n]is|['’]s)[ \n]reversed)\b)""",
    _PIECE,
)
"""'what does the tower mean next to the star', 'read the tower as advice'."""
READING = re.compile(
    r"\b(?:(?:do(?:es)?|did|would|could|might|can)[ \n](?:the[ \n])?|"
    r"(?:read|reads|reading|see|take|treat|interpret)[ \n](?:the[ \n])?)$",
    re.IGNORECASE,
)

PLACE_LEAD = re.compile(
    r"""(?:^|[.!?;,\n|][ ]?(?:[-*][ ]|\d+[.)][ ])?)[*_]*(?:the[ ]|my[ ])?(?:past|present|future|
    outcome|
    advice|obstacle|challenge|situation|crossing|crossed[ ]by|crowning|root|foundation|
    near[ ]future|
    recent[ ]past|hopes(?:[ ]and[ ]fears)?|fears|environment|self|you|them|action|lesson|body|mind|
    spirit|heart|morning|noon|evening|covers|crosses|beneath|above|behind|before)[*_]*[ ]?
    (?::|=|[-–—][ ])[*_]*[ ]?(?:the[ ])?$""",
    re.VERBOSE | re.IGNORECASE,
)
"""'Past: ', 'Outcome: the '."""

A_CARD = re.compile(
    rf"""[*_]*[ \n](?:as|for|is|was)[ \n](?:{_MY}|an?)[ \n](?:\w+[ \n]){{0,2}}cards?\b""", _PIECE
)
"""'the world as my last card'."""

CARD_WAS = re.compile(
    r"\bcards?\b[^.!?;:\n]{0,40}[ \n](?:was|is|were|came|said)[ \n](?:the[ \n])?$", re.IGNORECASE
)
"""'turned the top card, and it was'."""

ASKED_GOT = re.compile(
    r"\bask(?:ed|ing)?\b[^.!?;:\n]{0,60}[ \n](?:got|get|had|have|given)[ \n](?:the[ \n])?$",
    re.IGNORECASE,
)
"""'asked about the roof and got'."""

DRAWN_EARLIER = re.compile(
    r"\b(?:drew|drawn|pulled|dealt|laid|turned[ \n](?:up|over))\b[^.!?;:\n]{3,70}$", re.IGNORECASE
)
"""In the same sentence: 'drew the hermit this morning and'."""

AMONG_THEM = re.compile(
    r"""[ \n](?:between|beside|beneath|above|below|across|over|under|behind|crossing|
    on[ \n]top[ \n]of)[ \n](?:it|them|both|the[ \n]two)\b""",
    _PIECE,
)
"""'the devil between them'."""

FACE_UP = re.compile(
    r"[*_]*,?[ \n]face[ -](?:up|down)(?:wards?)?(?=[.,;:!?)]|$|[ ]and\b|[ ]on\b)", _PIECE
)

SAID_OF_CARDS = re.compile(
    "|".join(f"(?:{each.pattern})" for each in (CARD_AFTER, PLACED, IN_THE_PACK, A_CARD, FACE_UP)),
    _PIECE,
)
"""Any of these; one look is quicker than five."""

AGAIN = re.compile(r"[*_]*,?[ \n]again[ ]*[.!?]", _PIECE)

ON_SHOW = re.compile(
    rf"""[ \n](?:(?:is|was|still|now|back|up|propped)[ \n]){{0,3}}(?:on|against|under|beside)[ \n]
    {_MY}[ \n](?:sill|windowsill|dresser|desk|shelf|mantel\w*|altar|nightstand|bedside|fridge|
    mirror|pillow|cloth)\b""",
    _PIECE,
)
"""A card put up where it is seen."""

AT_A_SHOW = re.compile(
    r"""[ \n](?:at|in)[ \n](?:the|an?|our|some)[ \n](?:\w+[ \n])?(?:fair|opera|f[eê]te|carnival|
    pageant|circus|play|theatre|temple|museum|panto\w*|procession|costume)\b
    |[ \n]on[ \n](?:the|a)[ \n](?:pier|stage|float)\b""",
    _PIECE,
)
"""Somebody or something in costume, no card."""

IN_A_ROW = re.compile(
    r"""[*_]*[ \n]in[ \n](?:a|one|two|three|four|the[ \n]same)[ \n](?:row|days?|weeks?|months?|
    fortnight|spread|reading|draw|line|hand|night|year)\b""",
    _PIECE,
)
"""'two Towers in a week'."""

LETTER_FOR = re.compile(r"(?<!\w)([A-Z]) for (?:the )?$")
"""'D for the devil'."""

TABLE_TALK = re.compile(
    r"""[*_]*(?:[ ]*:|[ ][–—]|,?[ \n](?:
    again\b|(?:next|first|last)(?=[,.;])|cross(?:es|ing|ed)\b|cover(?:s|ing|ed)\b|beneath\b|above\b|below\b|behind\b|ahead\b|
    under\b|over\b|beside\b|next[ \n]to\b|opposite\b|upright\b|followed[ \n]by\b|
    on[ \n](?:the|my|her|his)[ \n](?:left|right|table)\b|
    at[ \n]the[ \n](?:root|foot|top|bottom|end|head|centre|heart)\b|
    in[ \n]the[ \n](?:middle|centre|past|future|present)\b|to[ \n]the[ \n](?:left|right)\b|
    turn(?:s|ed|ing)?[ \n]up\b|(?:never|always|often)[ \n]turn|c(?:o|a)mes?[ \n](?:up|about)\b|
    appear(?:s|ed)?\b|f(?:a|e)lls?[ \n](?:in|out|on|next|last|first|across|beside)\b|
    asks\b|says\b|means\b|shows\b|stands\b|sits\b|speaks\b|belongs\b|shares?[ \n]|looks\b|
    (?:jump|pop)p?ed[ \n]out\b|f(?:e|a)ll(?:s|ing)?[ \n]out\b|flew[ \n]out\b|slid[ \n]out\b|
    dropped[ \n]out\b|
    (?:was|is)[ \n](?:upside|reversed|upright|face[ \n](?:up|down)|stuck[ \n]to)\b|
    has[ \n](?:the|a|an|no|both|two|her|his|its)\b|is[ \n](?:the|a|my)[ \n](?:\w+[ \n])?card\b|
    is[ \n](?:the|a)[ \n](?:\w+[ \n])?(?:woman|lady|girl|man|boy|child|youth|figure|skeleton)\b|
    as[ \n](?:the|my|a|an)[ \n](?:outcome|advice|answer|card)\b|
    (?:i|we)[ \n](?:like|love|drew|had|read|did)\b))""",
    _PIECE,
)
"""What one says of a card and seldom of the thing: enough after a name that opens a sentence."""

NOTHING_MORE = re.compile(r"[*_'’\"”)]*[ ]*(?:[.?!…]|\||\n[ ]*(?:\n|[-*+|#>]|\d+[.)])|$)", _PIECE)
"""The sentence, line or cell ends here."""

CARD_LEAD = re.compile(
    r"\b(?:cards?|spread|draw|reading|pull|reversed|upright)\b"
    r"[^.!?:;\n]{0,30}:[ *_]*(?:the )?$",
    re.IGNORECASE,
)
"""'Card for May:'."""

DRAWN_LIST = re.compile(
    r"\b(?:drew|drawn|pulled|dealt|laid)\b[^.!?:;\n]{0,40}:[ *_]*(?:the )?$", re.IGNORECASE
)
"""'Drew for it:'."""

STOP = re.compile(r"[*_'’\"”]*[ ]*(?:[.,;:?!…)\]|/+\n—–]|$)", _PIECE)

JOINED = re.compile(
    r"[*_]*[ \n](?:and|or|then|beside|next to|crossed by|covered by|followed by|over|under|above"
    r"|below|across|upon|opposite|fell|falls|lay|lies|lying|sat|sits|stood|stands|cross|cover|face"
    r"|follow)"
)
"""A list may go on here."""

NUMBERED_CARD = re.compile(
    r"\b(?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|last|next|top|bottom)"
    r"(?: one)? (?:was|is|came|fell) (?:the )?$",
    re.IGNORECASE,
)
"""'the third was'."""

ITS_OWN = re.compile(r"['’]s?[ \n][a-z]")
"""'Death's horse'."""

NOBODYS = re.compile(r"['’]s?[ \n](?:door|bed|bench|peace|court|doorstep|hand|own|sake)\b", _PIECE)
"""'death's door'."""

OF_SOMEWHERE = re.compile(
    r"(?:['’]s?)?[ \n](?:of|among)[ \n](?:the[ \n])?[A-Z]|['’]s?[ \n][A-Z][a-z]"
    r"|[\"”'’*_]*[ \n](?:concerto|sonata|symphony|quartet|waltz|overture|march)\b"
    r"|[ \n]and[ \n][Oo]ther[ \n][A-Z]"
)
"""'Empress of Orrin', 'Star of the Sea', 'Devil's Spoon', 'the "Emperor" concerto'."""

_SIGNS = "aries taurus gemini cancer leo virgo libra scorpio sagittarius capricorn aquarius pisces"
_PLANETS = "mercury venus mars jupiter saturn uranus neptune pluto"
_ASPECTS = "square trine sextile conjunct opposite opposing conjunction"

IN_THE_SKY = re.compile(
    rf"""[ \n](?:(?:(?:\w+[ \n]){{0,2}}(?:in|into|enters|entering|leaves|leaving)[ \n])?
    (?:{_SIGNS.replace(" ", "|")})\b
    |(?:{_ASPECTS.replace(" ", "|")})[ \n](?:with[ \n])?(?:{_PLANETS.replace(" ", "|")})\b
    |(?:waxing|waning|rising|rises|rose|setting|sets?|shone|shines|shining|went[ \n]down|
    came[ \n]out|was[ \n]shining|came[ \n]up[ \n](?:over|behind|out|through|red|late|early))\b
    |(?:enters|entering)[ \n]something\b|(?:is|was|be)[ \n]void\b
    |(?:was|is|were)[ \n](?:already|nearly|not[ \n]yet|still|well)[ \n](?:behind|below|over|
    above|out|up|gone)\b
    |(?:will[ \n]be|is|was|were|be|hung|hangs|had[ \n]been)[ \n](?:(?:nearly|almost|not|already|
    very|still|
    just|so|properly)[ \n]){{0,2}}(?:full|new|gibbous|down|high|low|bright|hot|
    warm|out|setting|rising)\b
    |signs?\b|and[ \n](?:{_PLANETS.replace(" ", "|")})\b)""",
    _PIECE,
)
"""The lights in the sky, not the trumps: 'the Moon in Cancer', 'the Sun trine Mars'."""

_ABOUT = r"(?:over|under|above|below|across|against|upon|facing|before|after)"
_RELATED = (
    r"(?:(?:fell|falls|lay|lies|lying|sat|sits|stood|stands|came|comes)"
    rf"[ ](?:beside|by|next[ ]to|opposite|{_ABOUT})"
    r"|crosse[sd]|crossing|covers|covered|covering|faces|faced|follows|followed)"
)
BETWEEN = re.compile(
    rf"""[*_'’"”]*(?:[ ]\(?{_REVERSAL}\)?)?[*_'’"”]*
    (?:[ ]?[,;/+&→>|][ \n]?|[ ][–—-][ ]|[ \n]|
    [ ]?\n{{1,2}}[ ]?(?:(?:[-*+>]|\d{{1,2}}[.):])[ ])?(?:\[[ xX]\][ ])?|
    [.;]?[ \n](?:[-*][ ])?(?![^:\n]*\b(?:said|says|asked|thought|wrote)\b)
    [a-zA-Z][\w'’ ]{{1,28}}(?::|[ ][-–—])[ ])
    (?:(?:and|then|with|or|plus|next[ ]to|beside|crossed[ ]by|covered[ ]by|and[ ]then|followed[ ]by|
    alongside|opposite|{_ABOUT}|{_RELATED}|past|present|future|outcome|advice|obstacle|challenge)
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

PARAGRAPH = re.compile(r"\n\n[ ]?(?:#{1,6}[ ])?['\"‘“(*_~]*$")
"""The same of a paragraph or a heading."""

NEXT_WORD = re.compile(r"[*_]*[ \n][*_]*([^\W_][\w'’]*)")
WIDE = re.compile(r"\s\s+")


def _set(words: str) -> frozenset[str]:
    return frozenset(words.split())


CARD_WORDS = _set("card card: card, cards cards: cards, trump trump: trump, major major,")
OTHER_CARDS = _set("birthday christmas greetings credit business library place score sim")
AFTER_CARD_WORDS = _set(
    "of for the is was called my today today: again again: day day: week week: month month: morning"
    " night evening noon year year: this next last tomorrow tonight came out to be as has been"
    " monday tuesday wednesday thursday friday saturday sunday january february march april may"
    " june july august september october november december"
)
DRAWN = _set(
    "drew drew: drawn drawn: draw draw: pulled pulled: dealt dealt: pull pull: flipped flipped:"
) | {
    "crossed by",
    "covered by",
    "turned up",
    "turned over",
    "out fell",
    "out came",
    "cut to",
    "deck to",
    "pack to",
}
LAID = _set("laid lay lays laying drew drawn pulled dealt")
FOR_WHOM = _set("me him her us them you myself")
"""'drew me the hermit'."""
GETS = _set(
    "get gets getting got draw draws drawing drew pull pulls pulling see seeing turn turning"
)
SEES = _set("see seeing draw draws drawing drew turn turning")
HAPPENED = _set("got get had have given was is were came said")
OURS = (["our"], ["his"], ["her"], ["their"], ["your"])
LOOKS = (["look"], ["looked"], ["looking"], ["stared"], ["staring"], ["laughed"], ["gazed"])
RELATIVES = _set(
    "brother sister cousin aunt uncle niece nephew daughter son friend neighbour cat dog horse"
    " mare boat ship ferry"
)
"""'her brother Justice'."""
ALWAYS = _set("always keep keeps kept still forever")
"""'I always get the lovers'."""
SEVERAL = (["two"], ["three"], ["four"], ["five"], ["both"], ["several"])
NO_COMMON_WORD = _set("hierophant")
ARTICLES = _set("a an the")
PRONOUNS = _set("it him her them")
CALLED = _set("called named christened nicknamed spelt")
CALLS = _set("call calls calling name names")
"""The same, if 'her' or the like follows."""
SKY_BEFORE = _set(
    f"full new half waxing waning gibbous crescent thin blue harvest hunter's sinks {_ASPECTS}"
)
FELLOWS = _set(
    "moth moths butterfly butterflies penguin penguins dragonfly crab crabs beetle"
    " movement society league pledge hall hotel persuasion block cup record champion penalty"
    " certificate certificates duties rate toll row seat call glasses cream lounger secretary"
    " system department minister newspaper inn tavern pub brewery garage cinema theatre laundry"
    " race"
)
"""After a title: some creature, thing or body called so, 'the Temperance movement'."""

NAMING = _set(
    "mr mrs miss ms dr sir dame lady lord saint st captain canon father sister brother mother"
    " uncle aunt chief professor lieutenant sergeant king queen prince princess pope north south"
    " east west evening morning new full half old blue pole harvest great little upper lower april"
)
"""Before a capital word these make it part of a proper name, even where a sentence opens."""

NAMING_OF = _set("tower angel court house day lord king queen palace book temple tree")
"""'Tower of Strength', 'Court of Justice'."""

INN_PREPOSITIONS = _set("at to from in of behind outside opposite near")
INN_WORDS = _set(
    "inn pub tavern alehouse landlord landlady host hostess ostler pint pints ale beer cider bar"
    " supper supped dinner dined lunch lunched breakfast drink drinks drank drinking lodged lodging"
    " lodgings slept stayed staying stopped met meeting room rooms bed yard taproom parlour darts"
    " coach carrier put sign quiz"
)
"""'supper at the Star'."""
INN_FARE = _set(
    "inn pub pint pints ale beer cider landlord supper dinner lunch breakfast darts bar chips"
)
_DAY = r"(?:mon|tues?|weds?|wednes|thu(?:rs?)?|fri|satu?r?|sat)(?:day)?"
OTHER_DAY = re.compile(rf"\b{_DAY}\b[^.!?:\n]{{0,14}}$", re.IGNORECASE)
"""Before 'Sun': 'Saturday yes, '."""
DAY_OR_TIME = re.compile(
    r"[ /.]{1,2}(?:\d{1,2}(?:st|nd|rd|th)?\b|(?:off|morning|night|evening|afternoon|lunch)\b)",
    _PIECE,
)
"""'Sun 3 May', 'Sun off'."""
ON_A_DAY = (["on"], ["by"], ["till"], ["until"], ["next"], ["last"], ["every"])
TITLE_WORDS = _set(
    "fool magician high priestess empress emperor hierophant lovers chariot strength hermit wheel"
    " justice hanged death temperance devil tower star moon sun judgement judgment world ace two"
    " three four five six seven eight nine ten page knight queen king knave valet cavalier prince"
    " princess pope popess juggler lover universe force fortitude art house"
)
ABOUT = _set("over under above below across against upon before after")
"""Before small letters that end a list: 'the nine of cups under the moon'."""
AND_PARTNER = re.compile(r" (?:and|&) (?:the )?([A-Z][a-z]+)")

APART = _set(
    "i reversed upright rx r monday tuesday wednesday thursday friday saturday sunday january"
    " february march april may june july august september october november december mon tue wed thu"
    " fri sat fire water air earth"
) | _set(f"{_SIGNS} {_PLANETS}")
"""Words written with a capital that do not make the word before them part of a name."""
