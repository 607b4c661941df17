package boundwright.web.files;

import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.store.movein.Columns;
import boundwright.store.movein.DayOrder;
import boundwright.store.movein.Encoding;
import boundwright.store.movein.Field;
import boundwright.store.movein.Kind;
import boundwright.store.movein.Look;
import boundwright.store.movein.MoveIn;
import boundwright.store.movein.RowLook;
import boundwright.store.movein.Separator;
import boundwright.store.movein.Sheet;
import boundwright.web.files.WaitingFiles.WaitingFile;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Consumer;

/** A coach's own spreadsheet: shown with what each row becomes, and taken on the coach's word. */
final class MoveInHandler {
  private final Workbench bench;
  private final Pages pages;
  private final WaitingFiles waiting;

  MoveInHandler(Workbench bench, Pages pages, WaitingFiles waiting) {
    this.bench = bench;
    this.pages = pages;
    this.waiting = waiting;
  }

  private MoveIn moveIn() {
    return new MoveIn(bench);
  }

  /** A file as it is recognised. */
  void first(Context ctx, WaitingFile file) {
    Sheet sheet = Sheet.read(file.bytes(), null, null);
    Kind kind = moveIn().kind(sheet);
    show(ctx, 200, waiting.keep(file), file, sheet, moveIn().columns(kind, sheet), "");
  }

  /** The same file with what the coach chose. */
  void look(Context ctx) {
    String token = Form.text(ctx, "token");
    WaitingFile file = waiting.get(token);
    Sheet sheet = sheet(ctx, file);
    try {
      show(ctx, 200, token, file, sheet, columns(ctx, sheet), "");
    } catch (RefusedException e) {
      show(ctx, 422, token, file, sheet, moveIn().columns(kind(ctx), sheet), String.valueOf(e.getMessage()));
    }
  }

  /**
   * Takes it.
   *
   * @param done told what was taken
   */
  void take(Context ctx, Consumer<String> done) {
    String token = Form.text(ctx, "token");
    WaitingFile file = waiting.get(token);
    Sheet sheet = sheet(ctx, file);
    Columns columns = moveIn().columns(kind(ctx), sheet);
    try {
      columns = columns(ctx, sheet);
      MoveIn.Result result =
          moveIn().take(sheet, columns, new MoveIn.Order(Form.text(ctx, "bad").equals("skip"), Form.text(ctx, "later").equals("take"), file.name()));
      if (result.taken() == 0) {
        show(ctx, 422, token, file, sheet, columns, result.look().count(RowLook.State.BAD) > 0 ? "Nothing was taken: rows are refused. Leave them out, or correct the file." : "Nothing in it is new.");
        return;
      }
      waiting.drop(token);
      done.accept(
          Notes.counted(result.taken(), "row") + " of " + file.name() + " taken"
              + (result.look().count(RowLook.State.BAD) == 0 ? "." : ", " + result.look().count(RowLook.State.BAD) + " left out."));
    } catch (RefusedException e) {
      show(ctx, 422, token, file, sheet, columns, String.valueOf(e.getMessage()));
    }
  }

  private static Sheet sheet(Context ctx, WaitingFile file) {
    return Sheet.read(
        file.bytes(), Form.oneOf(Encoding.class, "reading", Form.text(ctx, "encoding")), Form.oneOf(Separator.class, "separator", Form.text(ctx, "separator")));
  }

  private static Kind kind(Context ctx) {
    return Form.oneOf(Kind.class, "kind of file", Form.text(ctx, "kind"));
  }

  /** What the form says; as recognised if its columns are those of another kind or reading. */
  private Columns columns(Context ctx, Sheet sheet) {
    Kind kind = kind(ctx);
    if (!Form.text(ctx, "of").equals(of(kind, sheet))) {
      return moveIn().columns(kind, sheet);
    }
    Map<Field, Integer> places = new EnumMap<>(Field.class);
    for (Field f : kind.fields()) {
      String chosen = Form.text(ctx, "column-" + f.key());
      if (!chosen.isEmpty()) {
        int place = Form.whole("column", chosen);
        if (place < 0 || place >= sheet.header().size()) {
          throw new RefusedException("The file has " + sheet.header().size() + " columns; there is no column " + place + ". Choose one from the list.");
        }
        places.put(f, place);
      }
    }
    String days = Form.text(ctx, "days");
    String unit = Form.text(ctx, "unit");
    return new Columns(
        kind, places, days.isEmpty() ? null : Form.oneOf(DayOrder.class, "order of days", days),
        unit.isEmpty() ? bench.settings().settings().unit() : Form.oneOf(LengthUnit.class, "unit", unit));
  }

  /** What a form's columns are of. */
  static String of(Kind kind, Sheet sheet) {
    return kind + " " + sheet.encoding() + " " + sheet.separator();
  }

  private void show(Context ctx, int status, String token, WaitingFile file, Sheet sheet, Columns columns, String refused) {
    Look look = null;
    String why = refused;
    try {
      look = moveIn().look(sheet, columns);
    } catch (RefusedException e) {
      why = refused.isEmpty() ? String.valueOf(e.getMessage()) : refused;
    }
    page(ctx, status, new MoveInView(token, file.name(), sheet, columns, moveIn().knows(columns.kind(), sheet), look, why));
  }

  private void page(Context ctx, int status, MoveInView view) {
    pages.show(ctx, status, "files/movein", view.name(), "settings", view);
  }
}
