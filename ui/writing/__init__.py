"""The writing desk."""
