"""Text files: what a person uploads, as the text a stop list is read from."""

import csv
import io

_BYTE_ORDER_MARKS = ((b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"))
_TABLES = {".csv": ",;", ".tsv": "\t"}


def decoded(data: bytes) -> str:
    """Read bytes as text: UTF-8, UTF-16 with its mark, else the Western code page of old Windows.

    Bytes that mean nothing there become the replacement character.
    """
    for mark, encoding in _BYTE_ORDER_MARKS:
        if data.startswith(mark):
            return data.decode(encoding, errors="replace")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", errors="replace")


def list_text(name: str, data: bytes) -> str:
    """Give an uploaded file's text; the cells of a .csv or .tsv table stand apart by two spaces."""
    text = decoded(data)
    delimiters = _TABLES.get(name[-4:].lower())
    if delimiters is None:
        return text
    delimiter = max(delimiters, key=text.count)
    rows = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)
    return "\n".join("  ".join(cell.strip() for cell in row if cell.strip()) for row in rows)
