package boundwright.store.movein;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/**
 * A spreadsheet as it was read.
 *
 * @param encoding how its letters are written
 * @param separator what stands between its cells
 * @param header the cells of the first line that is not empty
 * @param rows the lines after it that are not empty
 */
public record Sheet(Encoding encoding, Separator separator, List<String> header, List<Row> rows) {
  /** Most columns that are taken. */
  static final int MOST_COLUMNS = 200;

  /** Takes copies. */
  public Sheet {
    header = List.copyOf(header);
    rows = List.copyOf(rows);
  }

  /**
   * A line.
   *
   * @param line number in the file, from 1
   * @param cells stripped; perhaps fewer or more than the first line has
   */
  public record Row(int line, List<String> cells) {
    /** Takes a copy. */
    public Row {
      cells = List.copyOf(cells);
    }

    /** A cell; empty where the line has none. */
    public String cell(int place) {
      return place < cells.size() ? cells.get(place) : "";
    }
  }

  /** {@code read as Latin-1, separated by semicolons}. */
  public String readAs() {
    return "read as " + encoding.label() + ", separated by " + separator.label();
  }

  /**
   * Reads a file.
   *
   * @param asked what it is to be read as, or null: as it is recognised
   * @param between what is to separate its cells, or null: as it is recognised
   * @throws RefusedException if it is no text, is empty, or its quotes are wrong
   */
  public static Sheet read(byte[] file, @Nullable Encoding asked, @Nullable Separator between) {
    if (file.length > 3 && file[0] == 'P' && file[1] == 'K' && file[2] == 3 && file[3] == 4) {
      throw new RefusedException("This is a spreadsheet's own file (XLSX, ODS or the like), not text. Open it there and save the sheet as CSV, then choose that file.");
    }
    if (file.length > 3 && (file[0] & 0xFF) == 0xD0 && (file[1] & 0xFF) == 0xCF && (file[2] & 0xFF) == 0x11 && (file[3] & 0xFF) == 0xE0) {
      throw new RefusedException("This is an old spreadsheet's own file (XLS), not text. Open it there and save the sheet as CSV, then choose that file.");
    }
    Encoding encoding = asked == null ? Encoding.of(file) : asked;
    String text = encoding.text(file);
    Separator separator = between == null ? Separator.of(text) : between;
    List<Row> rows = rows(text, separator);
    if (rows.isEmpty()) {
      throw new RefusedException("The file is empty. Its first line names the columns; a line for each athlete, rep or result follows.");
    }
    List<String> header = rows.get(0).cells();
    if (header.size() > MOST_COLUMNS) {
      throw new RefusedException("The file has " + header.size() + " columns; at most " + MOST_COLUMNS + " are taken. Look whether it is separated by something else.");
    }
    return new Sheet(encoding, separator, header, rows.subList(1, rows.size()));
  }

  private static List<Row> rows(String text, Separator separator) {
    List<Row> out = new ArrayList<>();
    CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(separator.sign()).setIgnoreEmptyLines(false).get();
    int line = 1;
    try (CSVParser parser = CSVParser.builder().setReader(new StringReader(text)).setFormat(format).get()) {
      for (var records = parser.iterator(); ; ) {
        line = (int) parser.getCurrentLineNumber() + 1;
        if (!records.hasNext()) {
          return out;
        }
        CSVRecord cells = records.next();
        if (!cells.stream().allMatch(String::isBlank)) {
          out.add(new Row(line, cells.stream().map(String::strip).toList()));
        }
      }
    } catch (IOException | UncheckedIOException e) {
      throw new RefusedException(
          "In line " + line + " a quotation mark is not closed, or something follows it before the next cell. Quotes go around a whole cell, and a quote inside is written twice. Nothing was taken.", e);
    }
  }
}
