"""The house keeps its own rules."""

import ast
import importlib
import re
import sys
from io import StringIO
from pathlib import Path

import pytest
from django.core.management import call_command
from django.urls import URLPattern, get_resolver

from tests.house import FLOORS, ROOT, imports, knowledge, modules, top, tracked

ALLOWED = {
    *("README.md", "DEVELOPERS.md", "LICENSE", "manage.py", "pyproject.toml"),
    *("config", "instruments", "services", "registrations", "templates", "static", "tests"),
}
#: What knowledge may use besides the standard library and other knowledge.
LIBRARIES = {"highspy", "jsonschema", "numpy", "rapidfuzz", "reportlab", "segno"}
README, CI_RUN = ROOT / "README.md", ROOT / ".ci" / "run"
TEST_COMMAND = re.compile(r"^python3 -m venv .*\bpython -m pytest\b.*$", re.MULTILINE)


def shell() -> list:
    return [path for path in modules() if path not in knowledge()]


def longest_first(limit: int, sizes: dict[str, int]) -> list[str]:
    return [f"{name}: {size}" for name, size in sorted(sizes.items()) if size > limit]


def rooms_of_rules() -> list[str]:
    rules = tracked("registrations/checks/rules/*.py")
    return [path.stem for path in rules if path.stem != "__init__"]


def routes(resolver=None, way: str = ""):
    for entry in (resolver or get_resolver()).url_patterns:
        if isinstance(entry, URLPattern):
            yield way + str(entry.pattern), entry.callback
        elif entry.app_name != "admin":
            yield from routes(entry, way + str(entry.pattern))


def test_a_knowledge_module_knows_its_trade_and_little_else():
    known = {*sys.stdlib_module_names, *FLOORS, *LIBRARIES}
    foreign = [f"{path}: {name}" for path in knowledge() for name in imports(path)]

    assert [one for one in foreign if top(one.rpartition(": ")[2]) not in known] == []


def test_only_the_drawing_of_cards_knows_how_pages_are_printed():
    knowing = [path for path in modules() if "reportlab" in map(top, imports(path))]

    assert knowing == [Path("registrations/cards/draw.py")]


def test_a_knowledge_module_imports_no_shell():
    names = {".".join(path.with_suffix("").parts) for path in shell()}
    importing = [f"{path}: {name}" for path in knowledge() for name in imports(path) & names]

    assert importing == []


@pytest.mark.parametrize("floor", FLOORS)
def test_a_floor_imports_nothing_above_it(floor):
    above = FLOORS[FLOORS.index(floor) + 1 :]
    mine = [path for path in modules() if path.parts[0] == floor]

    assert [f"{one}: {name}" for one in mine for name in imports(one) if top(name) in above] == []


def test_nothing_imports_the_tests():
    importing = [str(path) for path in modules() if "tests" in map(top, imports(path))]

    assert importing == []


def test_the_settings_table_of_the_readme_names_every_setting_that_is_read():
    table = set(re.findall(r"^\| `([A-Z_]+)` \|", README.read_text(encoding="utf-8"), re.MULTILINE))

    assert table, "README.md has no settings table with rows like | `NAME` | ..."
    assert table == settings_read()


def settings_read() -> set[str]:
    calls = [
        node
        for node in ast.walk(ast.parse((ROOT / "config/settings.py").read_text(encoding="utf-8")))
        if isinstance(node, ast.Call) and node.args and isinstance(node.args[0], ast.Constant)
    ]
    reading = {"_boolean", "env"}
    return {
        call.args[0].value
        for call in calls
        if ast.unparse(call.func).split(".")[0] in reading
        or ast.unparse(call.func) in {"os.environ.get", "os.getenv"}
    }


def test_only_the_settings_read_the_environment():
    elsewhere = [
        str(path)
        for path in tracked("config/*.py", *(f"{floor}/*.py" for floor in FLOORS))
        if re.search(r"os\.(environ\b(?!\.setdefault)|getenv)", (ROOT / path).read_text("utf-8"))
    ]

    assert elsewhere == ["config/settings.py"]


@pytest.mark.parametrize(
    ("name", "file", "says"),
    [
        ("htmx", "htmx.min.js", r'version:"([\d.]+)"'),
        ("Sortable", "sortable.min.js", r"^/\*! Sortable ([\d.]+) "),
    ],
)
def test_a_script_that_is_served_is_the_one_that_is_stated(name, file, says):
    readme = (ROOT / "static/js/README.txt").read_text("utf-8")
    served = re.findall(says, (ROOT / "static/js" / file).read_text("utf-8"))
    part = readme[readme.index(f"\n{file}\n") :].split("From the npm package", 1)
    stated = re.findall(rf"{name} ([\d.]+),", part[0]) + re.findall(r"version ([\d.]+),", part[1])

    assert len(served) == 1
    assert stated[:2] == served * 2


@pytest.mark.django_db
def test_no_migration_is_missing():
    said = StringIO()

    call_command("makemigrations", check_changes=True, dry_run=True, stdout=said)

    assert "No changes detected" in said.getvalue()


def test_every_route_says_who_may_take_it():
    unmarked = [way for way, view in routes() if not getattr(view, "roles", None)]

    assert unmarked == []


def test_the_list_of_rules_is_complete_and_in_no_doubt():
    listed = [rule.__name__.rpartition(".")[2] for rule in rules()]

    assert sorted(listed) == rooms_of_rules()
    assert len({rule.NAME for rule in rules()}) == len(listed)


def rules() -> tuple:
    return importlib.import_module("registrations.checks").RULES


def test_every_rule_has_its_test_file():
    tested = {path.name for path in tracked("tests/registrations/*.py")}

    assert [rule for rule in rooms_of_rules() if f"test_{rule}.py" not in tested] == []


def test_modules_stay_short():
    code = modules() + tracked("config/*.py", "manage.py")
    sizes = {str(path): len((ROOT / path).read_text("utf-8").splitlines()) for path in code}

    assert longest_first(250, sizes) == []


def test_test_modules_stay_short():
    sizes = {
        str(path): len((ROOT / path).read_text("utf-8").splitlines())
        for path in tracked("tests/*.py")
    }

    assert longest_first(300, sizes) == []


def test_functions_stay_short():
    sizes = {
        f"{path}: {node.name}": node.end_lineno - node.lineno + 1
        for path in tracked("*.py")
        if "migrations" not in path.parts
        for node in ast.walk(ast.parse((ROOT / path).read_text("utf-8")))
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
    }

    assert longest_first(60, sizes) == []


def test_nothing_lies_about_on_the_doorstep():
    entries = {path.parts[0] for path in tracked()}
    strays = {entry for entry in entries if entry not in ALLOWED and not entry.startswith(".")}

    assert strays == set()


def test_ci_runs_the_very_test_command_of_the_readme():
    written = TEST_COMMAND.findall(README.read_text(encoding="utf-8"))
    run = TEST_COMMAND.findall(CI_RUN.read_text(encoding="utf-8"))

    assert len(written) == 1, "README.md must give the test command on one line, once"
    assert run == written
