"""Ringbound on the screen: knows Qt, asks binder, decides nothing about tarot."""
