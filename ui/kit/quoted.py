"""Words in quotes, without a second pair where they bring their own."""

_MARKS = '“”„"«»'


def quoted(words: str) -> str:
    """The words between one pair of curly quotes; those around them already are left off."""
    plain = words.strip()
    inner = plain.strip(_MARKS).strip()
    whole = inner and plain[:1] in _MARKS and plain[-1:] in _MARKS
    return f"“{inner if whole else plain}”"
