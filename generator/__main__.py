"""Lets `python -m generator` do what `study` does."""

from __future__ import annotations

from generator.cli import main

main()
