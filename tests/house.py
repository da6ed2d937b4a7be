"""The house as git knows it: which files there are, of what kind, on which floor.

Run as a program it names the knowledge modules, for the coverage that is asked of them.
"""

import ast
import subprocess
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
#: Lowest first: a floor may import the ones below it.
FLOORS = ("instruments", "services", "registrations")
DJANGO_NAMES = {
    *("admin", "apps", "forms", "models", "queries", "actions", "urls", "views"),
    *("middleware", "migrations", "management", "templatetags", "factories"),
}


def tracked(*patterns: str) -> list[Path]:
    """Give the files that git tracks, from the root, sorted."""
    listed = subprocess.run(
        ["git", "-c", f"safe.directory={ROOT}", "ls-files", "-z", "--", *patterns],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    paths = [Path(name) for name in listed.stdout.split("\0") if name]
    return sorted(path for path in paths if (ROOT / path).exists())


def modules() -> list[Path]:
    """Give the Python files of the three floors."""
    return tracked(*(f"{floor}/*.py" for floor in FLOORS))


def knowledge() -> list[Path]:
    """Give the modules of plain Python about organs: nothing in their path has a Django name."""
    return [path for path in modules() if DJANGO_NAMES.isdisjoint(path.with_suffix("").parts)]


def imports(path: Path) -> set[str]:
    """Give the dotted names that a file imports anywhere in it."""
    names: set[str] = set()
    for node in ast.walk(ast.parse((ROOT / path).read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names.update(alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            names.add(node.module or "")
            names.update(f"{node.module}.{alias.name}" for alias in node.names)
    return names


def top(name: str) -> str:
    """Give the first part of a dotted name."""
    return name.partition(".")[0]


if __name__ == "__main__":
    print(",".join(map(str, knowledge())))
