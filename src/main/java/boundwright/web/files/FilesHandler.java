package boundwright.web.files;

import boundwright.athlete.Athlete;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.store.RepCsv;
import boundwright.store.RepExport;
import boundwright.store.RepImport;
import boundwright.store.Workbench;
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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reps in and out as CSV. A file is read and shown first, and taken only on the coach's word. */
public final class FilesHandler {
  private static final int MOST_WAITING = 3;
  private static final int MOST_PAST = 5;

  private record Waiting(String name, String text) {}

  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;
  private final Map<String, Waiting> waiting = new LinkedHashMap<>();

  public FilesHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
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
    try {
      String text = text(file);
      String token = keep(new Waiting(Form.fileName(file), text));
      page(ctx, 200, preview(token, new Waiting(Form.fileName(file), text)));
    } catch (RefusedException e) {
      page(ctx, 422, blank(String.valueOf(e.getMessage()), ""));
    }
  }

  /** Takes the file that waits. */
  public void take(Context ctx) {
    String token = Form.text(ctx, "token");
    Waiting file = waiting(token);
    if (file == null) {
      page(ctx, 422, blank("The file is no longer at hand, so nothing was taken. Choose it again.", ""));
      return;
    }
    try {
      RepImport.Result result =
          new RepImport(bench)
              .take(new StringReader(file.text()), new RepImport.Order(Form.text(ctx, "bad").equals("skip"), Form.text(ctx, "later").equals("take"), file.name()));
      if (result.taken() == 0 && !result.problems().isEmpty()) {
        page(ctx, 422, preview(token, file));
        return;
      }
      drop(token);
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
      RepImport.TakenBack back = new RepImport(bench).takeBack(Form.whole("number of the import", Form.text(ctx, "number")));
      page(ctx, 200, blank("", Notes.counted(back.reps(), "rep") + " taken back" + (back.athletes() == 0 ? "." : ", and " + Notes.counted(back.athletes(), "athlete") + " whom the file had made.")));
    } catch (RefusedException e) {
      page(ctx, 422, blank(String.valueOf(e.getMessage()), ""));
    }
  }

  private FilesView blank(String refused, String said) {
    return FilesView.blank(past(), refused, said);
  }

  private List<FilesView.Past> past() {
    return new RepImport(bench)
        .taken(MOST_PAST).stream()
            .map(t -> new FilesView.Past(t.number(), (t.name().isEmpty() ? "A file" : t.name()) + ", " + Figures.dayOfYear(LocalDate.ofInstant(t.at(), bench.clock().getZone())) + ": " + Notes.counted(t.reps(), "rep")))
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

  private FilesView preview(String token, Waiting file) {
    RepImport.Look look = new RepImport(bench).look(new StringReader(file.text()));
    int athletes = (int) look.rows().stream().map(r -> r.athlete().toLowerCase(Locale.ROOT)).distinct().count();
    return new FilesView(token, file.name(), look.rows().size(), look.there(), look.problems(), athletes, look.later(), past(), "", "");
  }

  private static String text(UploadedFile file) throws IOException {
    try (InputStream in = file.content()) {
      byte[] bytes = in.readAllBytes();
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw new RefusedException("The file is not text in UTF-8, so nothing was taken. Save it as CSV in UTF-8 and choose it again.", e);
    }
  }

  private String keep(Waiting file) {
    String token = gate.fresh();
    synchronized (waiting) {
      waiting.put(token, file);
      while (waiting.size() > MOST_WAITING) {
        waiting.remove(waiting.keySet().iterator().next());
      }
    }
    return token;
  }

  private @Nullable Waiting waiting(String token) {
    synchronized (waiting) {
      return waiting.get(token);
    }
  }

  private void drop(String token) {
    synchronized (waiting) {
      waiting.remove(token);
    }
  }

  private void page(Context ctx, int status, FilesView view) {
    pages.show(ctx, status, "files/import", "Reps from a file", "settings", view);
  }
}
