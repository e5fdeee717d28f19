"""`python -m binder.cli`."""

from binder.cli.command_line import main

raise SystemExit(main())
