"""Are templates compiled once, kept only where Python may keep its own, and never stale?"""

from __future__ import annotations

import sys
from pathlib import Path

import jinja2
import pytest

from generator.report.template import compiled


@pytest.fixture
def words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A template in a folder whose compiled files may be kept."""
    monkeypatch.setattr(sys, "dont_write_bytecode", False)
    path = tmp_path / "words.html"
    path.write_text("first", encoding="utf-8")
    return path


def _said(path: Path, use: str = "words") -> str:
    """What a newly started run reads."""
    made = jinja2.Environment(
        loader=jinja2.FileSystemLoader(path.parent), bytecode_cache=compiled(use)
    )
    return made.get_template(path.name).render()


def _kept(path: Path) -> list[Path]:
    return sorted(path.parent.rglob("*.pyc"))


def test_a_template_is_compiled_once_for_each_use(
    words: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert _said(words) == "first"
    assert len(_kept(words)) == 1

    def compile_again(*_: object, **__: object) -> None:
        raise AssertionError("compiled again")

    with monkeypatch.context() as patched:
        patched.setattr(jinja2.Environment, "compile", compile_again)
        assert _said(words) == "first"
    _said(words, "page")
    assert len(_kept(words)) == 2


def test_a_changed_template_is_compiled_again(words: Path) -> None:
    _said(words)
    words.write_text("second", encoding="utf-8")
    assert _said(words) == "second"


def test_a_broken_file_is_compiled_again(words: Path) -> None:
    _said(words)
    for path in _kept(words):
        path.write_bytes(b"")
    assert _said(words) == "first"


def test_nothing_is_kept_where_python_keeps_nothing(
    words: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "dont_write_bytecode", True)
    assert _said(words) == "first"
    assert not _kept(words)
