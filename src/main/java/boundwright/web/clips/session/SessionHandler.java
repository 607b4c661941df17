package boundwright.web.clips.session;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.athlete.person.Scope;
import boundwright.clip.day.SessionDesk;
import boundwright.clip.day.SessionFilm;
import boundwright.clip.day.SessionRep;
import boundwright.clip.day.SessionSheet;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Addresses;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Sent;
import boundwright.web.page.Turned;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The pages of films of whole sessions. */
public final class SessionHandler {
  private final Workbench bench;
  private final Pages pages;

  public SessionHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
  }

  /** Adds the pages to the routes; before those of the clips, since {@code session} is no clip's number. */
  public void add(RoutesConfig routes) {
    routes.get(Gate.SESSION, this::list);
    routes.post(Gate.SESSION, this::take);
    routes.get("/clips/session/rep/{rep}", this::row);
    routes.get("/clips/session/rep/{rep}/still/{number}", this::still);
    routes.post("/clips/session/rep/{rep}/name", this::name);
    routes.post("/clips/session/rep/{rep}/unname", this::unname);
    routes.post("/clips/session/rep/{rep}/aside", this::aside);
    routes.post("/clips/session/rep/{rep}/own", this::own);
    routes.post("/clips/session/rep/{rep}/nod", this::nod);
    routes.post("/clips/session/rep/{rep}/back", this::takeBack);
    routes.get("/clips/session/{film}", this::show);
    routes.get("/clips/session/{film}/progress", this::progress);
    routes.post("/clips/session/{film}/consent", this::consent);
    routes.post("/clips/session/{film}/cancel", this::cancel);
    routes.post("/clips/session/{film}/go-on", this::goOn);
    routes.post("/clips/session/{film}/done", this::done);
    routes.post("/clips/session/{film}/drop", this::drop);
    routes.post("/clips/session/{film}/remove", this::remove);
  }

  private SessionDesk desk() {
    return bench.sessions();
  }

  /** The list. */
  private void list(Context ctx) {
    list(ctx, 200, Sent.NOTHING);
  }

  private void list(Context ctx, int status, Sent sent) {
    pages.show(
        ctx, status, "clips/session/list", "Films of sessions", "clips",
        new SessionsView(
            desk().all(), bench.settings().plan().drills(), unit(), bench.settings().settings().facility().surface(), bench.clips().keepFilms(),
            desk().freeBytes(), today(), sent));
  }

  /** Takes a film in. */
  private void take(Context ctx) throws IOException {
    try {
      String steps = Form.text(ctx, "steps");
      String asked = Form.text(ctx, "sequence").equals("other") ? Form.text(ctx, "other") : Form.text(ctx, "sequence");
      String mark = Form.text(ctx, "mark");
      SessionDesk.Asked all =
          new SessionDesk.Asked(
              asked.isEmpty() ? null : Sequence.parse(asked), steps.isEmpty() ? 0 : Form.whole("number of approach steps", steps),
              Form.oneOf(Surface.class, "surface", Form.text(ctx, "surface")), mark.isEmpty() ? null : (Double) unit().read("mark to the sand", mark));
      LocalDate date = Form.date(Form.text(ctx, "date"), today());
      UploadedFile film = ctx.uploadedFile("film");
      if (film == null || film.filename().isBlank()) {
        throw new RefusedException("No film was chosen. Choose the film of a session.");
      }
      SessionFilm kept;
      try (InputStream in = film.content()) {
        kept = desk().take(date, Form.fileName(film), in, all);
      }
      ctx.redirect("/clips/session/" + kept.id(), HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      list(ctx, 422, Sent.of(ctx, String.valueOf(e.getMessage())));
    }
  }

  /** A film's page, or its part that changes while it is being cut. */
  private void show(Context ctx) {
    page(ctx, 200, film(ctx).id(), null, "");
  }

  /** The progress alone, for a page that watches; the whole page once it is done. */
  private void progress(Context ctx) {
    SessionFilm film = film(ctx);
    if (!SessionView.working(film)) {
      ctx.header("HX-Refresh", "true");
    }
    pages.show(ctx, 200, "clips/session/progress", "Film", "clips", view(film.id(), null, ""));
  }

  /** One row, for a page that watches a rep being read. */
  private void row(Context ctx) {
    SessionRep rep = rep(ctx);
    SessionView view = view(rep.filmId(), null, "");
    SessionView.Line line = view.lines().stream().filter(l -> l.row().rep().id() == rep.id()).findFirst().orElseThrow(() -> new Turned(404, "The rep was set aside."));
    pages.show(ctx, 200, "clips/session/row", "Rep", "clips", line);
  }

  private void page(Context ctx, int status, long film, SessionView.@Nullable Ask ask, String refused) {
    pages.show(ctx, status, "clips/session/film", "Film of a session", "clips", view(film, ask, refused));
  }

  private SessionView view(long film, SessionView.@Nullable Ask ask, String refused) {
    SessionSheet sheet = desk().sheet(film);
    List<Athlete> squad = bench.athletes().all();
    return new SessionView(sheet, squad, bench.people().standings(Scope.FILM), unit(), today(), bench.clock().instant(), bench.clock().getZone(), ask, refused);
  }

  /** Names whom a rep shows; with {@code may}, says first whether they may be filmed. */
  private void name(Context ctx) {
    SessionRep rep = rep(ctx);
    if (Form.text(ctx, "athlete").isEmpty()) {
      page(ctx, 422, rep.filmId(), null, "Nobody was chosen. Choose who it was.");
      return;
    }
    Athlete athlete = Addresses.athlete(Form.text(ctx, "athlete"), bench);
    if (Form.has(ctx, "may")) {
      bench.people().say(athlete.id(), Scope.FILM, Form.text(ctx, "may").equals("yes"));
    }
    try {
      desk().name(rep.id(), athlete);
      back(ctx, rep);
    } catch (RefusedException e) {
      boolean asked = bench.people().standing(athlete.id(), Scope.FILM).may();
      page(ctx, 422, rep.filmId(), asked ? null : new SessionView.Ask(rep.id(), athlete), String.valueOf(e.getMessage()));
    }
  }

  /** Takes a name back. */
  private void unname(Context ctx) {
    change(ctx, id -> desk().unname(id));
  }

  /** Says that something is no rep, or is one after all. */
  private void aside(Context ctx) {
    change(ctx, id -> desk().setAside(id, !Form.text(ctx, "aside").equals("no")));
  }

  /** Says that a rep is one of its own. */
  private void own(Context ctx) {
    change(ctx, id -> desk().ownRep(id));
  }

  /** Logs a rep. */
  private void nod(Context ctx) {
    change(
        ctx,
        id -> {
          // a second tap finds the rep logged and only shows it
          if (!desk().logged(desk().rep(id))) {
            desk().nod(id);
          }
        });
  }

  /** Takes a logged rep back. */
  private void takeBack(Context ctx) {
    change(ctx, id -> desk().takeBack(id));
  }

  /** Something that changes a rep. */
  private interface Change {
    void make(long rep);
  }

  private void change(Context ctx, Change change) {
    SessionRep rep = rep(ctx);
    try {
      change.make(rep.id());
      back(ctx, rep);
    } catch (RefusedException e) {
      page(ctx, 422, rep.filmId(), null, String.valueOf(e.getMessage()));
    }
  }

  /** Says whether somebody may be filmed. */
  private void consent(Context ctx) {
    SessionFilm film = film(ctx);
    Athlete athlete = Addresses.athlete(Form.text(ctx, "athlete"), bench);
    bench.people().say(athlete.id(), Scope.FILM, Form.text(ctx, "may").equals("yes"));
    ctx.redirect("/clips/session/" + film.id() + "#consent", HttpStatus.SEE_OTHER);
  }

  /** Calls the cutting off. */
  private void cancel(Context ctx) {
    film(ctx, id -> desk().cancel(id));
  }

  /** Goes on cutting. */
  private void goOn(Context ctx) {
    film(ctx, id -> desk().goOn(id));
  }

  /** The coach is through with the film. */
  private void done(Context ctx) {
    film(ctx, id -> desk().done(id));
  }

  /** Drops the film itself. */
  private void drop(Context ctx) {
    film(ctx, id -> desk().dropFilm(id));
  }

  private void film(Context ctx, Change change) {
    SessionFilm film = film(ctx);
    try {
      change.make(film.id());
      ctx.redirect("/clips/session/" + film.id(), HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, 422, film.id(), null, String.valueOf(e.getMessage()));
    }
  }

  /** Removes a film. */
  private void remove(Context ctx) {
    desk().remove(film(ctx).id());
    ctx.redirect("/clips/session", HttpStatus.SEE_OTHER);
  }

  /** A picture of a rep. */
  private void still(Context ctx) throws IOException {
    String number = ctx.pathParam("number");
    if (!number.matches("\\d{1,2}\\.jpg")) {
      throw new Turned(404, "There is no picture " + number + ".");
    }
    Path file =
        desk().still(rep(ctx).id(), Integer.parseInt(number.substring(0, number.length() - 4)))
            .orElseThrow(() -> new Turned(404, "This rep has no such picture (any more)."));
    ctx.header("Cache-Control", "private, max-age=604800, immutable");
    ctx.contentType("image/jpeg");
    ctx.result(Files.readAllBytes(file));
  }

  private void back(Context ctx, SessionRep rep) {
    ctx.redirect("/clips/session/" + rep.filmId() + "#rep-" + rep.id(), HttpStatus.SEE_OTHER);
  }

  private SessionFilm film(Context ctx) {
    try {
      return desk().film(number(ctx.pathParam("film")));
    } catch (RefusedException e) {
      throw new Turned(404, String.valueOf(e.getMessage()));
    }
  }

  private SessionRep rep(Context ctx) {
    try {
      return desk().rep(number(ctx.pathParam("rep")));
    } catch (RefusedException e) {
      throw new Turned(404, String.valueOf(e.getMessage()));
    }
  }

  private static long number(String text) {
    if (!text.matches("\\d{1,18}")) {
      throw new Turned(404, "Nothing has the number " + text + ". Choose a film from the list.");
    }
    return Long.parseLong(text);
  }

  private LengthUnit unit() {
    return bench.settings().settings().unit();
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
