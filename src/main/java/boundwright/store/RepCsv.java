package boundwright.store;

import boundwright.flight.Rep;
import boundwright.quantity.RefusedException;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;

/**
 * Reps as comma-separated values (RFC 4180), the format described in {@code docs/formats.md}. The first line names the
 * columns, in any order. Reading takes the good rows and reports every bad one with its line; nothing is guessed: separators,
 * units and dates that are not those of the format are told, not tried. A file whose columns or quotes are wrong gives no rows
 * at all, because then no row can be trusted. Writing streams, and what is written reads back as the same reps.
 */
public final class RepCsv {
  /** The columns in the order in which they are written. */
  public static final List<String> COLUMNS =
      List.of(
          "date",
          "athlete",
          "sequence",
          "approach_steps",
          "surface",
          "footprints_m",
          "landing_m",
          "outcome",
          "mark_to_sand_m",
          "faults");

  /** What stands in {@code faults} when the technique was looked at and nothing was wrong. */
  public static final String CLEAN = "clean";

  private static final Set<String> OPTIONAL = Set.of("mark_to_sand_m", "faults");
  private static final CSVFormat READ =
      CSVFormat.RFC4180.builder().setIgnoreEmptyLines(false).setIgnoreSurroundingSpaces(true).get();
  private static final char BOM = '\uFEFF';

  private RepCsv() {}

  /**
   * One rep of a file.
   *
   * @param line line of the file on which it begins, from 1; 0 if it was not read from a file
   * @param athlete name as written
   * @param rep the rep, with athlete number 0
   */
  public record Row(int line, String athlete, Rep rep) {}

  /**
   * Something that cannot be taken.
   *
   * @param line line of the file, from 1
   * @param why whole sentences for the coach
   */
  public record Problem(int line, String why) {}

  /**
   * What a file held.
   *
   * @param rows good rows in the file's order
   * @param later good rows that are dated after today, in the file's order: whether they are meant is asked
   * @param problems a problem for each bad row, in the file's order
   */
  public record Reading(List<Row> rows, List<Row> later, List<Problem> problems) {
    /** Takes copies. */
    public Reading {
      rows = List.copyOf(rows);
      later = List.copyOf(later);
      problems = List.copyOf(problems);
    }
  }

  /** Lines of a file in words: {@code line 4}, {@code lines 2 to 9, 12}. */
  public static String lines(List<Integer> lines) {
    StringBuilder out = new StringBuilder(lines.size() == 1 ? "line " : "lines ");
    for (int i = 0; i < lines.size(); ) {
      int to = i;
      while (to + 1 < lines.size() && lines.get(to + 1) == lines.get(to) + 1) {
        to++;
      }
      out.append(i == 0 ? "" : ", ").append(lines.get(i)).append(to == i ? "" : " to " + lines.get(to));
      i = to + 1;
    }
    return out.toString();
  }

  /** Opens a file as strict UTF-8: bytes that are not become a problem, not question marks. */
  public static Reader open(Path file) {
    try {
      return new BufferedReader(new InputStreamReader(Files.newInputStream(file), StandardCharsets.UTF_8.newDecoder()));
    } catch (NoSuchFileException e) {
      throw new RefusedException("There is no file " + file + ". Check the name and the folder.", e);
    } catch (IOException e) {
      throw new RefusedException("The file " + file + " cannot be read: " + e.getMessage() + ". Check that it is a file and that you may read it.", e);
    }
  }

  /** As {@link #read(Reader, LocalDate)}, without a limit to the dates' future. */
  public static Reading read(Reader in) {
    return read(in, LocalDate.MAX);
  }

  /**
   * Reads a file. The reader is not closed.
   *
   * @param today rows that are dated after it are told apart
   */
  public static Reading read(Reader in, LocalDate today) {
    List<Row> rows = new ArrayList<>();
    List<Row> later = new ArrayList<>();
    Scan scan = scan(in, r -> (r.rep().date().isAfter(today) ? later : rows).add(r));
    return scan.whole() ? new Reading(rows, later, scan.problems()) : new Reading(List.of(), List.of(), scan.problems());
  }

  /**
   * What came of reading a file row by row.
   *
   * @param problems a problem for each bad row, in the file's order
   * @param whole false where columns or quotes are wrong: then no row that was told can be trusted
   */
  record Scan(List<Problem> problems, boolean whole) {
    /** Takes a copy. */
    Scan {
      problems = List.copyOf(problems);
    }
  }

  /**
   * Reads a file row by row and holds none. The reader is not closed.
   *
   * @param good told the good rows in the file's order
   */
  static Scan scan(Reader in, Consumer<Row> good) {
    List<Problem> problems = new ArrayList<>();
    int line = 1;
    try {
      @SuppressWarnings("MustBeClosedChecker") // closing it would close the caller's reader
      CSVParser parser = CSVParser.builder().setReader(withoutMark(in)).setFormat(READ).get();
      Iterator<CSVRecord> records = parser.iterator();
      RepRow reader = null;
      while (true) {
        // Before hasNext, which reads the record: a quoted cell can go over several lines.
        line = (int) parser.getCurrentLineNumber() + 1;
        if (!records.hasNext()) {
          break;
        }
        CSVRecord cells = records.next();
        if (isBlank(cells)) {
          continue;
        }
        if (reader == null) {
          String wrong = wrongHeader(cells);
          if (!wrong.isEmpty()) {
            return broken(line, wrong);
          }
          reader = new RepRow(places(cells));
        } else {
          reader.read(line, cells, good, problems);
        }
      }
      if (reader == null) {
        problems.add(new Problem(1, "The file is empty. " + needed()));
      }
    } catch (IOException e) {
      return unreadable(e, line);
    } catch (UncheckedIOException e) {
      return unreadable(e.getCause() == null ? e : e.getCause(), line);
    }
    return new Scan(problems, true);
  }

  private static Scan unreadable(Exception e, int line) {
    if (e instanceof CharacterCodingException) {
      return broken(line, "The file is not UTF-8 from about this line on. Save it as CSV UTF-8 and try again.");
    }
    // An open quote at the end of the file comes as a plain IOException.
    if (e instanceof CSVException || String.valueOf(e.getMessage()).contains("EOF")) {
      return broken(
          line,
          "A quotation mark here is not closed, or something follows it before the comma. Quotes go around a whole cell, and a"
              + " quote inside is written twice. The rest of the file cannot be told apart.");
    }
    throw new RefusedException("The file could not be read to its end: " + e.getMessage() + ". Nothing was taken. Try again.", e);
  }

  private static Scan broken(int line, String why) {
    return new Scan(List.of(new Problem(line, why)), false);
  }

  /** Writes the columns and the rows as they come. The writer is flushed, not closed. */
  public static void write(Writer out, Iterable<Row> rows) {
    try {
      @SuppressWarnings("resource") // closing it would close the caller's writer
      CSVPrinter csv = new CSVPrinter(out, CSVFormat.RFC4180);
      csv.printRecord(COLUMNS);
      for (Row row : rows) {
        Rep rep = row.rep();
        Double landing = rep.landing_m();
        Double mark = rep.markToSand_m();
        csv.printRecord(
            rep.date(),
            shielded(row.athlete()),
            shielded(rep.sequence().text()),
            rep.approachSteps(),
            rep.surface().label(),
            Footprints.write(rep.footprints_m()),
            landing == null ? "" : Footprints.number(landing),
            RepRow.written(rep),
            mark == null ? "" : Footprints.number(mark),
            rep.judged() && rep.faults().isEmpty() ? CLEAN : shielded(String.join(";", rep.faults())));
      }
      csv.flush();
    } catch (IOException e) {
      throw new RefusedException(
          "The file could not be written to its end: " + e.getMessage() + ". What is there of it is not whole; free some space and export again.", e);
    }
  }

  /**
   * A spreadsheet runs a cell that begins with one of = + - @ as a formula. Such a text is written behind an apostrophe, which
   * a spreadsheet shows as text; {@link #bare} takes it off again. A text that already looks shielded gets one more, so that
   * every text comes back.
   */
  static String shielded(String text) {
    return looksLikeFormula(text) ? "'" + text : text;
  }

  /** The text before {@link #shielded}. */
  static String bare(String cell) {
    return cell.startsWith("'") && looksLikeFormula(cell) ? cell.substring(1) : cell;
  }

  private static boolean looksLikeFormula(String text) {
    int at = 0;
    while (at < text.length() && text.charAt(at) == '\'') {
      at++;
    }
    return at < text.length() && "=+-@".indexOf(text.charAt(at)) >= 0;
  }

  private static Reader withoutMark(Reader in) throws IOException {
    BufferedReader buffered = in instanceof BufferedReader b ? b : new BufferedReader(in);
    buffered.mark(1);
    if (buffered.read() != BOM) {
      buffered.reset();
    }
    return buffered;
  }

  /** Spreadsheets leave rows of nothing but commas. */
  private static boolean isBlank(CSVRecord cells) {
    return cells.stream().allMatch(String::isBlank);
  }

  /** What is wrong with the first line, or nothing. */
  private static String wrongHeader(CSVRecord header) {
    if (header.size() == 1) {
      for (char other : new char[] {';', '\t'}) {
        if (header.get(0).indexOf(other) >= 0) {
          return "The columns are separated by " + (other == ';' ? "semicolons" : "tabs") + "; this file needs commas between the columns,"
              + " a point in the numbers and semicolons only between footprints. Save it as CSV with commas.";
        }
      }
    }
    List<String> wrong = new ArrayList<>();
    Set<String> seen = new LinkedHashSet<>();
    for (String cell : header) {
      String name = columnName(cell);
      if (!COLUMNS.contains(name)) {
        wrong.add(name.isEmpty() ? "A column has no name." : "There is no column '" + cell.strip() + "'.");
      } else if (!seen.add(name)) {
        wrong.add("The column '" + name + "' is there twice.");
      }
    }
    for (String column : COLUMNS) {
      if (!seen.contains(column) && !OPTIONAL.contains(column)) {
        wrong.add("The column '" + column + "' is missing.");
      }
    }
    return wrong.isEmpty() ? "" : String.join(" ", wrong) + " " + needed();
  }

  /** Whether a line names columns of this format and no others, separated by commas; some may be missing, which reading tells. */
  public static boolean isHeader(String line) {
    List<String> names = Arrays.stream(line.split(",", -1)).map(RepCsv::columnName).toList();
    return names.size() > 2 && COLUMNS.containsAll(names);
  }

  private static String needed() {
    return "The first line names the columns, in any order: " + String.join(",", COLUMNS) + " (the last two may be left out).";
  }

  private static String columnName(String cell) {
    return cell.strip().toLowerCase(Locale.ROOT);
  }

  private static Map<String, Integer> places(CSVRecord header) {
    Map<String, Integer> out = new HashMap<>();
    for (int i = 0; i < header.size(); i++) {
      out.put(columnName(header.get(i)), i);
    }
    return out;
  }
}
