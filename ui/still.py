"""Imported first of all: importing makes much that stays, and looking through it takes time.

`ui.app` has what was made set apart, and rubbish collected again.
"""

import gc

LOOKED = gc.isenabled()
"""Whether rubbish was collected before."""

gc.disable()
