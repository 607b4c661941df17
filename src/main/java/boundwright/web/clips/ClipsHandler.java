package boundwright.web.clips;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.athlete.person.Scope;
import boundwright.athlete.person.Standing;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Addresses;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Sent;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The list of clips: taking films in, calling off, reading again, removing; and the pictures. */
public final class ClipsHandler {
  private final Workbench bench;
  private final Pages pages;
  private final ClipLooks looks;

  public ClipsHandler(Workbench bench, Pages pages, ClipLooks looks) {
    this.bench = bench;
    this.pages = pages;
    this.looks = looks;
  }

  /** The list. */
  public void list(Context ctx) {
    String taken = Form.text(ctx, "taken");
    String said =
        taken.matches("\\d{1,4}")
            ? (taken.equals("1") ? "1 film" : taken + " films") + " taken. You may leave this page: reading goes on."
            : Form.has(ctx, "removed") ? "The clip is removed." : "";
    page(ctx, 200, only(ctx), Sent.NOTHING, said);
  }

  /** Takes films in. */
  public void take(Context ctx) throws IOException {
    Athlete athlete = null;
    int taken = 0;
    try {
      if (Form.text(ctx, "athlete").isEmpty()) {
        throw new RefusedException("No athlete was chosen. Choose whom the films show, and choose the films again.");
      }
      athlete = Addresses.athlete(Form.text(ctx, "athlete"), bench);
      LengthUnit unit = bench.settings().settings().unit();
      String steps = Form.text(ctx, "steps");
      int approach = Athlete.checkSteps(steps.isEmpty() ? athlete.rung() : Form.whole("number of approach steps", steps));
      String asked = Form.text(ctx, "sequence").equals("other") ? Form.text(ctx, "other") : Form.text(ctx, "sequence");
      Sequence sequence = asked.isEmpty() ? null : Sequence.parse(asked);
      Surface surface = Form.oneOf(Surface.class, "surface", Form.text(ctx, "surface"));
      String mark = Form.text(ctx, "mark");
      Double markToSand = mark.isEmpty() ? null : (Double) unit.read("mark to the sand", mark);
      LocalDate date = Form.date(Form.text(ctx, "date"), LocalDate.now(bench.clock()));
      List<UploadedFile> films = ctx.uploadedFiles("film").stream().filter(f -> !f.filename().isBlank()).toList();
      if (films.isEmpty()) {
        throw new RefusedException("No film was chosen. Choose one or more films of one rep each.");
      }
      if (!Form.text(ctx, "may").isEmpty()) {
        bench.people().say(athlete.id(), Scope.FILM, true);
      }
      bench.people().mayBeFilmed(athlete);
      for (UploadedFile film : films) {
        try (InputStream in = film.content()) {
          looks.desk().take(athlete.id(), date, Form.fileName(film), in, sequence, approach, surface, markToSand);
          taken++;
        }
      }
      ctx.redirect("/clips?taken=" + taken + (Form.text(ctx, "only").isEmpty() ? "" : "&athlete=" + athlete.id()), HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      String before = taken == 0 ? "" : taken + " of the films " + (taken == 1 ? "was" : "were") + " taken before this one. ";
      page(ctx, 422, Form.text(ctx, "only").isEmpty() ? null : athlete, Sent.of(ctx, before + e.getMessage()), "");
    }
  }

  /** One line, for a page that watches a clip being read. */
  public void row(Context ctx) {
    ClipRecord clip = looks.clip(ClipLooks.id(ctx));
    boolean alone = Form.has(ctx, "alone");
    if (alone && clip.state() == ClipState.READ) {
      ctx.header("HX-Refresh", "true");
    }
    String only = Form.text(ctx, "list");
    pages.show(ctx, 200, "clips/row", "Clips", "clips", line(clip, only.isEmpty() ? "/clips" : "/clips?athlete=" + only, alone));
  }

  /** Calls a clip off. */
  public void cancel(Context ctx) {
    looks.desk().cancel(ClipLooks.id(ctx));
    back(ctx);
  }

  /** Reads a clip again as it was read before. */
  public void retry(Context ctx) {
    ClipRecord clip = looks.clip(ClipLooks.id(ctx));
    bench.people().mayBeFilmed(Addresses.athlete(String.valueOf(clip.athleteId()), bench));
    looks.desk().retry(clip.id(), clip.box(), clip.boxFrame());
    looks.forget(clip.id());
    back(ctx);
  }

  /** Removes a clip. */
  public void remove(Context ctx) {
    long id = ClipLooks.id(ctx);
    looks.clip(id);
    looks.desk().remove(id);
    looks.forget(id);
    String list = listOf(ctx);
    ctx.redirect(list + (list.contains("?") ? "&" : "?") + "removed=1", HttpStatus.SEE_OTHER);
  }

  /** The picture of a frame of the film. */
  public void still(Context ctx) throws IOException {
    String frame = ctx.pathParam("frame");
    if (!frame.matches("\\d{1,7}\\.jpg")) {
      throw new Turned(404, "There is no picture " + frame + ".");
    }
    Path file =
        looks.desk().still(ClipLooks.id(ctx), Integer.parseInt(frame.substring(0, frame.length() - 4)))
            .orElseThrow(() -> new Turned(404, "This frame has no picture (any more)."));
    // a frame's picture never changes; the address carries when the clip came in, so that a number used twice shows the right one
    String tag = "\"" + Files.getLastModifiedTime(file).toMillis() + "-" + Files.size(file) + "\"";
    ctx.header("ETag", tag);
    ctx.header("Cache-Control", "private, max-age=604800, immutable");
    if (tag.equals(ctx.header("If-None-Match"))) {
      ctx.status(304);
      return;
    }
    ctx.contentType("image/jpeg");
    ctx.result(Files.readAllBytes(file));
  }

  private static String listOf(Context ctx) {
    String list = Form.text(ctx, "list");
    return list.matches("/clips(\\?athlete=\\d{1,18}|/\\d{1,18})?") ? list : "/clips";
  }

  private static void back(Context ctx) {
    ctx.redirect(listOf(ctx), HttpStatus.SEE_OTHER);
  }

  private @Nullable Athlete only(Context ctx) {
    String id = Form.text(ctx, "athlete");
    return id.isEmpty() ? null : Addresses.athlete(id, bench);
  }

  /** A line of the list. */
  ClipsView.Line line(ClipRecord clip, String list, boolean alone) {
    return line(clip, bench.athletes().byId(clip.athleteId()).map(Athlete::name), list, alone);
  }

  /** Lines of several clips; what each line looks up is looked up once. */
  List<ClipsView.Line> lines(List<ClipRecord> clips, String list) {
    return lines(clips, bench.athletes().all(), list);
  }

  private List<ClipsView.Line> lines(List<ClipRecord> clips, List<Athlete> squad, String list) {
    Map<Long, String> names = squad.stream().collect(Collectors.toMap(Athlete::id, Athlete::name));
    return clips.stream().map(c -> line(c, Optional.ofNullable(names.get(c.athleteId())), list, false)).toList();
  }

  private ClipsView.Line line(ClipRecord clip, Optional<String> name, String list, boolean alone) {
    // only where a box may be offered are the pictures looked for: a list has many clips that were read
    boolean mayBox = clip.state().canRetry() && (alone || clip.state() != ClipState.READ);
    boolean pictures = mayBox && looks.desk().pictureSize(clip.id()).isPresent();
    return new ClipsView.Line(clip, name.orElse("athlete no longer kept"), LocalDate.now(bench.clock()), list, alone, pictures);
  }

  /** Whether of somebody who may be chosen it is not recorded that they may be filmed. */
  private boolean mustAsk(List<Athlete> squad, @Nullable Athlete only) {
    Map<Long, Standing> said = bench.people().standings(Scope.FILM);
    return squad.stream()
        .filter(a -> only == null || a.id() == only.id())
        .anyMatch(a -> !said.getOrDefault(a.id(), Standing.NOT_ASKED).may());
  }

  private void page(Context ctx, int status, @Nullable Athlete only, Sent sent, String said) {
    ClipDesk desk = looks.desk();
    String list = only == null ? "/clips" : "/clips?athlete=" + only.id();
    List<Athlete> squad = bench.athletes().all();
    List<ClipRecord> shown = desk.all().stream().filter(c -> only == null || c.athleteId() == only.id()).toList();
    pages.show(
        ctx,
        status,
        "clips/clips",
        "Clips",
        only == null ? "clips" : "squad",
        new ClipsView(
            lines(shown, squad, list), squad, only, bench.settings().plan().drills(), bench.settings().settings().unit(),
            bench.settings().settings().facility().surface(), LocalDate.now(bench.clock()), sent, said, mustAsk(squad, only), desk.lessons().putRight(shown)));
  }
}
