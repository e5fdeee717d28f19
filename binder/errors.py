"""Every failure a user can meet carries one plain sentence that says what to do."""


class RingboundError(Exception):
    """Base of all of Ringbound's own errors; `str(error)` is the sentence shown to the user."""


class CanMend(RingboundError):
    """Something the user can put right: a mistyped card, a full disk, a file that is no binder."""


class OwnFault(RingboundError):
    """Something only the makers can put right; the sentence says that nothing was lost."""
