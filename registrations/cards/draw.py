"""Draw: pages as a PDF. The only file that knows ReportLab."""

import io
from functools import cache
from pathlib import Path

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from registrations.cards.content import Sheet
from registrations.cards.fonts import Face, Fonts
from registrations.cards.layout import lay_out
from registrations.cards.pages import Bar, Page, Text
from registrations.cards.papers import Paper

FOLDER = Path(__file__).resolve().parents[2] / "static" / "fonts"
_UNIT = 72 / 25.4


@cache
def load_fonts() -> Fonts:
    """Read the fonts once, for measuring and for drawing."""
    widths = {}
    for face in Face:
        font = TTFont(face.value, FOLDER / f"{face}.ttf")
        pdfmetrics.registerFont(font)
        known = font.face.charToGlyph
        widths[face] = {one: font.face.charWidths[one] for one in known}
    return Fonts(widths)


def draw_pdf(
    sheets: tuple[Sheet, ...],
    paper: Paper,
    *,
    title: str,
    subject: str = "Console cards",
    language: str = "en-GB",
) -> bytes:
    """Give the sheets as a PDF file: the same sheets on the same paper give the same bytes.

    The fonts are embedded, each sheet has a bookmark, and the file says its title and language.
    """
    fonts = load_fonts()
    file = io.BytesIO()
    canvas = Canvas(
        file,
        invariant=1,
        lang=language,
        initialFontName=Face.REGULAR.value,
        pageCompression=1,
    )
    canvas.setTitle(title)
    canvas.setSubject(subject)
    canvas.setAuthor("Loftbook")
    canvas.setCreator("Loftbook")
    for number, page in enumerate(lay_out(sheets, paper, fonts)):
        _draw_page(canvas, page, number, fonts)
    canvas.save()
    return file.getvalue()


def _draw_page(canvas: Canvas, page: Page, number: int, fonts: Fonts) -> None:
    canvas.setPageSize((page.width * _UNIT, page.height * _UNIT))
    if page.bookmark:
        canvas.bookmarkPage(f"page-{number}")
        canvas.addOutlineEntry(page.bookmark, f"page-{number}")
    for mark in page.marks:
        if isinstance(mark, Text):
            _draw_text(canvas, mark, page.height, fonts)
        else:
            _draw_bar(canvas, mark, page.height)
    canvas.showPage()


def _draw_text(canvas: Canvas, mark: Text, height: float, fonts: Fonts) -> None:
    line = canvas.beginText(mark.x * _UNIT, (height - mark.y) * _UNIT)
    # The space keeps words apart for programs that read the text back.
    for face, text in fonts.runs(f"{mark.text} ", mark.face):
        line.setFont(face.value, mark.size)
        line.textOut(text)
    canvas.drawText(line)


def _draw_bar(canvas: Canvas, mark: Bar, height: float) -> None:
    bottom = (height - mark.y - mark.height) * _UNIT
    canvas.rect(mark.x * _UNIT, bottom, mark.width * _UNIT, mark.height * _UNIT, stroke=0, fill=1)
