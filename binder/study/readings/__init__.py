"""Readings: begun, laid, kept, looked back on."""
