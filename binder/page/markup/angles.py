"""Which `<` of a leaf opens a tag, and which is a character somebody typed."""

import re

LESS = "\x02less\x03"
"""Stands for a `<` that opens no tag, until the HTML has been cleaned."""

MOST_TAGS = 1_000
"""A leaf with more HTML tags than this has them shown as they were typed."""

_NAMES = (
    "a abbr address article aside audio b base bdi bdo big blockquote body br button canvas caption"
    " center cite code col colgroup data dd del details dfn div dl dt em embed fieldset figcaption"
    " figure font footer form frame frameset h1 h2 h3 h4 h5 h6 head header hr html i img input ins"
    " kbd label legend li link main map mark menu meta meter nav object ol optgroup option output p"
    " param picture pre progress q rp rt ruby s samp section select small source span strike strong"
    " sub summary sup table tbody td tfoot th thead time tr track tt u ul var video wbr"
)
_GREEDY = "iframe math noembed noframes noscript script style svg template textarea title xmp"
_TAGS = frozenset(_NAMES.split())
_SWALLOWING = frozenset(_GREEDY.split())
_ANGLE = re.compile(
    r"(?<=\]\()<[^<>\n]*>|(?<=\]: )<[^<>\n]*>"  # the address of a link, in angle brackets
    r"|<[a-z][a-z0-9+.-]*://[^<>\s]*>|<[^<>\s@!]+@[^<>\s@]+>"  # an address that is its own link
    r"|<!--.*?-->|</?([a-z][a-z0-9]*)(?:[\s/][^<>]*)?>|<",
    re.IGNORECASE | re.DOTALL,
)


def angles(text: str) -> str:
    """The text with every `<` that opens no known tag replaced by LESS.

    A tag that would swallow all that follows, such as <script>, must be closed further on.
    Comments and addresses in angle brackets stay.
    """
    last = text.rfind("-->") + 1
    told = text[:last] + text[last:].replace("<!--", f"{LESS}!--")
    lowered = told.lower()
    ends = {name: lowered.rfind(f"</{name}") for name in _SWALLOWING}
    kept = 0

    def judge(match: re.Match[str]) -> str:
        nonlocal kept
        found, name = match[0], (match[1] or "").lower()
        if found == "<" or (name and name not in _TAGS and ends.get(name, -1) < match.start()):
            return LESS + found[1:]
        kept += 1
        return found

    judged = _ANGLE.sub(judge, told)
    return judged if kept <= MOST_TAGS else text.replace("<", LESS)
