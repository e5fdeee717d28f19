"""Places to break for words no line can hold.

Qt lays out a word without a break in time that grows with the square of its length, so one long
enough would freeze the window. What is shown gets invisible breaks; the leaf's text has none.
"""

import re

LONGEST = 300
"""Characters of a word shown without a place to break."""
BREAK = "\N{ZERO WIDTH SPACE}"

_HAS_LONG = re.compile(rf"[^\s<>]{{{LONGEST}}}")
# The groups are atomic: an entity is never taken apart again, which would take for ever.
_TAG_OR_RUN = re.compile(rf"<[^<>]*>|(?>(?>&[#\w]{{1,31}};|[^\s<>]){{{LONGEST}}})")


def breakable(html: str) -> str:
    """The HTML with a place to break in every run of LONGEST characters outside its tags."""
    if not _HAS_LONG.search(html):
        return html
    return _TAG_OR_RUN.sub(lambda found: found[0] + BREAK * (found[0][0] != "<"), html)
