package boundwright.card;

import boundwright.meet.day.DaySheet;
import boundwright.quantity.LengthUnit;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;

/** The sheet of a meet's day on paper: what hangs on the bag. */
public final class MeetDayCard {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);

  private final CardPdf pdf;

  public MeetDayCard(CardPdf pdf) {
    this.pdf = pdf;
  }

  /**
   * What is printed.
   *
   * @param sheet of the day
   * @param unit the coach's unit
   * @param date in words
   * @param note what must stand on it, or empty
   */
  public record Page(DaySheet sheet, LengthUnit unit, String date, String note) {}

  /**
   * The sheet as a PDF.
   *
   * @param note what must stand on it, or empty
   */
  public byte[] render(DaySheet sheet, LengthUnit unit, Paper paper, String note) {
    Page page = new Page(sheet, unit, DAY.format(sheet.sheet().date()), note);
    return pdf.set("card/meetday.jte", Map.of("page", page, "css", pdf.css("/web/season.css") + CardPdf.page(sheet.sheet().name(), paper)));
  }
}
