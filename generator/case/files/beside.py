"""What stands in the files that a case names beside it: its bytes, or why they are refused?

The one door: a name without a folder, the file itself and no link, regular, read up to its limit.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from generator.case.files.looks import looks_like
from generator.case.read import file_bytes
from generator.case.said import Said
from generator.errors import CaseError, Fault


@dataclass(frozen=True)
class Beside:
    """The folder of the case, and what was read there: it belongs to the case's fingerprint."""

    folder: Path
    case_file: str
    faults: list[Fault]
    read: dict[str, bytes] = field(default_factory=dict)
    lengths: dict[int, float] = field(default_factory=dict)  # m of the tracks, by leg

    def file(self, name: str) -> str:
        """How a file of that name is told of in a fault: with the folder of the case."""
        return str(Path(self.case_file).parent / name)

    def content(self, said: object, path: str, kind: str, largest: int) -> bytes | None:
        """The bytes of a file that the case names; a fault where they cannot be had."""
        if not isinstance(said, Said):
            return None
        name = said.text
        if not name.isprintable() or Path(name).name != name or name.startswith("."):
            shown = "".join(letter if letter.isprintable() else "?" for letter in name[:60])
            problem, hope = f"is `{shown}`", "expected the name of a file beside the case"
            self.faults.append(Fault(self.case_file, said.line, path, problem, hope))
            return None
        if name not in self.read:
            try:
                self.read[name] = self._text_bytes(name, kind, largest)
            except CaseError as error:
                for fault in error.faults:
                    problem = f"names {name}, which {fault.problem}"
                    if fault.problem.startswith("there"):
                        problem = f"names {name}: {fault.problem}"
                    self.faults.append(
                        Fault(self.case_file, said.line, path, problem, fault.expected)
                    )
                return None
        return self.read[name]

    def _text_bytes(self, name: str, kind: str, largest: int) -> bytes:
        """The bytes of a file that should hold text; CaseError where it is something else."""
        file = str(self.folder / name)
        content = file_bytes(self.folder / name, file, kind, largest, links=False)
        if found := looks_like(content):
            raise CaseError([Fault(file, 1, "", f"is {found}", f"expected a {kind} file")])
        return content
