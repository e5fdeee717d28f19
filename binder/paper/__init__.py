"""From a tab to sheets of paper."""
