package boundwright.web.files;

import boundwright.athlete.Athlete;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.store.RepCsv;
import boundwright.store.RepExport;
import boundwright.store.RepImport;
import boundwright.store.Workbench;
import boundwright.store.movein.MoveIn;
import boundwright.web.files.WaitingFiles.WaitingFile;
import boundwright.web.page.Addresses;
import boundwright.web.page.Figures;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.StringReader;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Files in, and reps out as CSV. A file is read and shown first, and taken only on the coach's word. */
public final class FilesHandler {
  private static final int MOST_PAST = 5;

  private final Workbench bench;
  private final Pages pages;
  private final WaitingFiles waiting;
  private final MoveInHandler moveIn;

  public FilesHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.waiting = new WaitingFiles(gate::fresh);
    this.moveIn = new MoveInHandler(bench, pages, waiting);
  }

  /** The page before a file is chosen. */
  public void show(Context ctx) {
    page(ctx, 200, blank("", ""));
  }

  /** Reads the file that was sent and shows what is in it. */
  public void read(Context ctx) throws IOException {
    UploadedFile file = ctx.uploadedFile("file");
    if (file == null || file.size() == 0) {
      page(ctx, 422, blank("No file was chosen, or it is empty. Choose a CSV file.", ""));
      return;
    }
    try (InputStream in = file.content()) {
      WaitingFile sent = new WaitingFile(Form.fileName(file), in.readAllBytes());
      Optional<String> text = reps(sent.bytes());
      if (text.isPresent()) {
        page(ctx, 200, preview(waiting.keep(sent), sent.name(), text.get()));
      } else {
        moveIn.first(ctx, sent);
      }
    } catch (RefusedException e) {
      page(ctx, 422, blank(String.valueOf(e.getMessage()), ""));
    }
  }

  /** Shows a coach's own file again as they chose. */
  public void look(Context ctx) {
    try {
      moveIn.look(ctx);
    } catch (RefusedException e) {
      page(ctx, 422, blank(String.valueOf(e.getMessage()), ""));
    }
  }

  /** Takes a coach's own file. */
  public void move(Context ctx) {
    try {
      moveIn.take(ctx, said -> page(ctx, 200, blank("", said)));
    } catch (RefusedException e) {
      page(ctx, 422, blank(String.valueOf(e.getMessage()), ""));
    }
  }

  /** Takes the file that waits. */
  public void take(Context ctx) {
    String token = Form.text(ctx, "token");
    Optional<WaitingFile> file = waiting.find(token);
    Optional<String> text = file.flatMap(f -> reps(f.bytes()));
    if (file.isEmpty() || text.isEmpty()) {
      page(ctx, 422, blank("The file is no longer at hand, so nothing was taken. Choose it again.", ""));
      return;
    }
    try {
      RepImport.Result result =
          new RepImport(bench)
              .take(() -> new StringReader(text.get()), new RepImport.Order(Form.text(ctx, "bad").equals("skip"), Form.text(ctx, "later").equals("take"), file.get().name()));
      if (result.taken() == 0 && !result.problems().isEmpty()) {
        page(ctx, 422, preview(token, file.get().name(), text.get()));
        return;
      }
      waiting.drop(token);
      String said =
          Notes.counted(result.taken(), "rep") + " taken, " + Notes.counted(result.newAthletes(), "new athlete")
              + (result.there().isEmpty() ? "" : ", " + result.there().size() + " there already")
              + (result.later().isEmpty() ? "" : ", " + result.later().size() + " dated after today left out")
              + (result.problems().isEmpty() ? "." : ", " + Notes.counted(result.problems().size(), "bad row") + " left out.")
              + (result.newAthletes() == 0 ? "" : " The level of a new athlete is not set: set it on their page.");
      page(ctx, 200, blank("", said));
    } catch (RefusedException e) {
      page(ctx, 422, blank(String.valueOf(e.getMessage()), ""));
    }
  }

  /** Takes an import back whole. */
  public void back(Context ctx) {
    try {
      page(ctx, 200, blank("", "Taken back: " + new MoveIn(bench).takeBack(Form.whole("number of the import", Form.text(ctx, "number"))) + "."));
    } catch (RefusedException e) {
      page(ctx, 422, blank(String.valueOf(e.getMessage()), ""));
    }
  }

  private FilesView blank(String refused, String said) {
    return FilesView.blank(past(), refused, said);
  }

  private List<FilesView.Past> past() {
    return new MoveIn(bench)
        .past(MOST_PAST).stream()
            .map(t -> new FilesView.Past(t.number(), (t.name().isEmpty() ? "A file" : t.name()) + ", " + Figures.dayOfYear(LocalDate.ofInstant(t.at(), bench.clock().getZone())) + ": " + t.here()))
            .toList();
  }

  /** All reps, or those of one athlete, as CSV. */
  public void export(Context ctx) throws IOException {
    String wanted = Form.text(ctx, "athlete");
    Athlete athlete = wanted.isEmpty() ? null : Addresses.athlete(wanted, bench);
    ctx.contentType("text/csv; charset=utf-8");
    ctx.header(
        "Content-Disposition",
        "attachment; filename=\"reps" + (athlete == null ? "" : "-" + Form.fileName(athlete.name())) + ".csv\"");
    Writer out = new BufferedWriter(new OutputStreamWriter(ctx.outputStream(), StandardCharsets.UTF_8));
    if (athlete == null) {
      new RepExport(bench).write(out);
    } else {
      RepCsv.write(out, bench.reps().inOrder(athlete.id()).stream().map(r -> new RepCsv.Row(0, athlete.name(), r)).toList());
    }
    out.flush();
  }

  private FilesView preview(String token, String name, String text) {
    RepImport.Look look = new RepImport(bench).look(new StringReader(text));
    int athletes = (int) look.rows().stream().map(r -> r.athlete().toLowerCase(Locale.ROOT)).distinct().count();
    return new FilesView(token, name, look.rows().size(), look.there(), look.problems(), athletes, look.later(), past(), "", "");
  }

  /** The file as the columns of reps are written; empty for any other file, which the coach says what it is. */
  private static Optional<String> reps(byte[] bytes) {
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      String bare = text.startsWith("\uFEFF") ? text.substring(1) : text;
      return RepCsv.isHeader(bare.lines().findFirst().orElse("")) ? Optional.of(bare) : Optional.empty();
    } catch (CharacterCodingException e) {
      return Optional.empty();
    }
  }

  private void page(Context ctx, int status, FilesView view) {
    pages.show(ctx, status, "files/import", "From a file", "settings", view);
  }
}
