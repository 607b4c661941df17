package boundwright.store.movein;

import boundwright.athlete.Athlete;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.RepCsv;
import boundwright.store.RepImport;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** A file of reps in columns of the coach's own: written out in the columns of {@link RepCsv}, and read as such a file is. */
final class MappedReps {
  private final Columns columns;
  private final Days days;
  private final List<RowLook> bad = new ArrayList<>();
  /** The row of the coach's file that stands in each line written out, from line 2. */
  private final List<Sheet.Row> written = new ArrayList<>();
  private final String text;

  MappedReps(Sheet sheet, Columns columns) {
    this.columns = columns;
    this.days = new Days(columns.order());
    StringWriter out = new StringWriter();
    try (CSVPrinter csv = new CSVPrinter(out, CSVFormat.RFC4180)) {
      csv.printRecord(RepCsv.COLUMNS);
      for (Sheet.Row row : sheet.rows()) {
        List<String> cells = cells(row);
        if (!cells.isEmpty()) {
          csv.printRecord(cells);
          written.add(row);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    this.text = out.toString();
  }

  private List<String> cells(Sheet.Row row) {
    Map<String, String> cells = new HashMap<>();
    try {
      for (Field f : Kind.REPS.fields()) {
        String cell = columns.cell(row, f).replaceAll("[\\r\\n]+", " ");
        cells.put(
            f.key(),
            switch (f) {
              case REP_DATE -> days.read("date", cell).toString();
              case LANDING -> length("landing", cell);
              case MARK -> length("mark to the sand", cell);
              case FOOTPRINTS -> Arrays.stream(cell.split(";", -1)).map(part -> length("footprint", part.strip())).collect(Collectors.joining(";"));
              default -> cell;
            });
      }
    } catch (RefusedException e) {
      bad.add(new RowLook(row.line(), RowLook.State.BAD, String.valueOf(e.getMessage())));
      return List.of();
    }
    return RepCsv.COLUMNS.stream().map(c -> cells.getOrDefault(c, "")).toList();
  }

  /** Metres with a point; what is no length stays as it is, for the reader of reps to refuse. */
  private String length(String what, String cell) {
    if (cell.isEmpty() || (columns.unit() == LengthUnit.METRES && Cells.point(cell).matches("[+-]?\\d*\\.?\\d+"))) {
      return Cells.point(cell);
    }
    return new BigDecimal(columns.unit().read(what, cell)).setScale(4, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString();
  }

  List<RowLook> look(RepImport reps) {
    RepImport.Look look = reps.look(new StringReader(text));
    List<RowLook> out = new ArrayList<>(bad);
    look.problems().forEach(p -> out.add(new RowLook(line(p.line()), RowLook.State.BAD, p.why())));
    look.there().forEach(l -> out.add(new RowLook(line(l), RowLook.State.THERE, "a rep that is here already")));
    look.later().forEach(l -> out.add(new RowLook(line(l), RowLook.State.LATER, "a rep dated after today")));
    look.rows()
        .forEach(
            r ->
                out.add(
                    new RowLook(
                        line(r.line()), RowLook.State.NEW,
                        r.athlete() + ": " + r.rep().date() + ", " + r.rep().sequence().text() + ", " + Athlete.fromSteps(r.rep().approachSteps()))));
    out.sort(Comparator.comparingInt(RowLook::line));
    return out;
  }

  long take(RepImport reps, boolean later, String name) {
    return reps.take(() -> new StringReader(text), new RepImport.Order(true, later, name)).number();
  }

  private int line(int writtenLine) {
    int at = writtenLine - 2;
    return at >= 0 && at < written.size() ? written.get(at).line() : 1;
  }
}
