"""Sheets before they are printed."""
