package boundwright.card;

import boundwright.picture.season.SeasonDrawing;
import boundwright.picture.season.SeasonPicture;
import boundwright.picture.season.SeasonPicture.Size;
import boundwright.season.Meet;
import boundwright.season.sheet.SeasonOverview;
import boundwright.season.sheet.WeekSheet;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;

/** A season on paper: the plan for the wall, and the sheet of a week. */
public final class SeasonSheets {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
  /** Room for heading, legend, meets, margins and foot of the wall plan [mm]. */
  private static final double BESIDE_ROWS_MM = 62;
  private static final double NAMES_MM = 40;
  private static final double MARGINS_MM = 20;
  private static final double LEAST_ROW_MM = 6.6;
  private static final double MOST_ROW_MM = 20;
  private static final double TYPE_MM = 2.5;
  private static final double SMALL_MM = 2.1;

  private final CardPdf pdf;

  public SeasonSheets(CardPdf pdf) {
    this.pdf = pdf;
  }

  /** What the plan hangs on, across (ISO 216; published). */
  public enum Wall {
    /** 420 mm x 297 mm. */
    A3(420, 297),
    /** 297 mm x 210 mm. */
    A4(297, 210);

    private final int width_mm;
    private final int height_mm;

    Wall(int width_mm, int height_mm) {
      this.width_mm = width_mm;
      this.height_mm = height_mm;
    }
  }

  /**
   * An athlete's row on the wall.
   *
   * @param most of one leg in a week, in whole standing-bound contacts
   */
  public record WallRow(String athlete, String most, SeasonPicture picture) {}

  /** The whole wall plan. */
  public record WallPage(String name, String sub, SeasonPicture head, List<WallRow> rows, List<String> meets, String note) {
    /** Takes copies. */
    public WallPage {
      rows = List.copyOf(rows);
      meets = List.copyOf(meets);
    }
  }

  /**
   * A week's sheet.
   *
   * @param days as headings; those on which nobody has anything to do are left out
   * @param columns their places in the week, 0 for Monday
   */
  public record WeekPage(String name, String sub, List<String> days, List<Integer> columns, WeekSheet sheet, String note) {
    /** Takes copies. */
    public WeekPage {
      days = List.copyOf(days);
      columns = List.copyOf(columns);
    }
  }

  /**
   * The plan for the wall; as many athletes stand on a page as can be read.
   *
   * @param note what must stand on it, or empty
   */
  public byte[] wall(SeasonOverview season, Wall wall, String note) {
    double strip_mm = wall.width_mm - MARGINS_MM - NAMES_MM;
    double week = Size.SCREEN.week();
    double units = week * season.weeks() / strip_mm;
    double row_mm = Math.max(LEAST_ROW_MM, Math.min(MOST_ROW_MM, (wall.height_mm - BESIDE_ROWS_MM) / Math.max(1, season.rows().size())));
    Size size = new Size(week, units * row_mm, units * TYPE_MM, units * SMALL_MM);
    List<WallRow> rows =
        season.rows().stream().map(r -> new WallRow(r.athlete(), String.valueOf(Math.round(r.most())), SeasonDrawing.row(season, r, size))).toList();
    WallPage page =
        new WallPage(season.name(), DAY.format(season.first()) + " to " + DAY.format(season.last()) + version(season.version()), SeasonDrawing.head(season, size), rows, meets(season), note);
    String css =
        ".wall .season-strip { width: " + strip_mm + "mm; height: " + row_mm + "mm; }\n.wall thead .season-strip { height: " + page.head().height() / units
            + "mm; }\n.wall .wall-who { width: " + NAMES_MM + "mm; }\n";
    return pdf.set("card/wall.jte", Map.of("page", page, "css", pdf.css("/web/season.css") + css + CardPdf.across(season.name(), wall.width_mm, wall.height_mm, 9)));
  }

  /**
   * The sheet of a week, on A4 across.
   *
   * @param note what must stand on it, or empty
   */
  public byte[] week(WeekSheet sheet, String note) {
    return pdf.set("card/week.jte", Map.of("page", page(sheet, note), "css", pdf.css("/web/season.css") + CardPdf.across(sheet.season(), Wall.A4.width_mm, Wall.A4.height_mm, 8)));
  }

  /** What stands on the sheet of a week. */
  public static WeekPage page(WeekSheet sheet, String note) {
    List<Integer> columns =
        IntStream.range(0, 7).filter(d -> !sheet.meets().get(d).isEmpty() || sheet.rows().stream().anyMatch(r -> !r.cells().get(d).free())).boxed().toList();
    LocalDate monday = sheet.days().get(0);
    return new WeekPage(
        sheet.season(), "Week of " + DAY.format(monday) + version(sheet.version()), columns.stream().map(d -> SHORT.format(sheet.days().get(d))).toList(), columns, sheet, note);
  }

  /** Meets by the numbers of their flags. */
  public static List<String> meets(SeasonOverview season) {
    List<String> out = new ArrayList<>();
    for (Meet m : season.meets()) {
      out.add((out.size() + 1) + " " + m.name() + ", " + SHORT.format(m.date()));
    }
    return out;
  }

  private static String version(int version) {
    return version == 0 ? ", not published" : ", version " + version;
  }
}
