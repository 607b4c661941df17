package boundwright.web.door;

import java.util.List;
import java.util.Optional;

/**
 * The one table of routes and rights. A route that no line names is refused to everybody but the machine itself, so that a new page is
 * shut until somebody has thought about it; a test walks all routes of the server with every role and finds each of them here.
 */
public final class Rights {
  private Rights() {}

  /**
   * @param method {@code GET}, {@code POST}
   * @param path the route as it is registered; with {@code *} at its end, all that begin so
   * @param noted what is noted of it once it is done, in words; empty for nothing
   */
  public record Line(String method, String path, Right right, String noted) {
    boolean isOf(String asked, String route) {
      return method.equals(asked)
          && (path.endsWith("*") ? route.startsWith(path.substring(0, path.length() - 1)) : route.equals(path));
    }

    /** Whether it is about one athlete: then an athlete is let in to their own only. */
    public boolean ofOneAthlete() {
      return path.startsWith("/athlete/");
    }
  }

  private static Line get(String path, Right right) {
    return new Line("GET", path, right, "");
  }

  private static Line get(String path, Right right, String noted) {
    return new Line("GET", path, right, noted);
  }

  private static Line post(String path, Right right) {
    return new Line("POST", path, right, "");
  }

  private static Line post(String path, Right right, String noted) {
    return new Line("POST", path, right, noted);
  }

  /** The first line that fits counts. */
  private static final List<Line> TABLE =
      List.of(
          get("/assets/<name>", Right.OPEN),
          get("/health", Right.OPEN),
          get("/login", Right.OPEN),
          post("/login", Right.OPEN),
          post("/login/passkey*", Right.OPEN),
          post("/login/department", Right.OPEN),
          // where a department's server sends a browser back to: what it brings is checked there
          get("/login/department/back", Right.OPEN),
          get("/enter/{code}", Right.OPEN),
          post("/enter/{code}", Right.OPEN),
          post("/enter/{code}/department", Right.OPEN),
          post("/logout", Right.OPEN),
          get("/pair", Right.OPEN),
          get("/pair/{code}", Right.OPEN),
          post("/pair/{code}", Right.OPEN),
          get("/trust", Right.OPEN),
          get("/trust/authority.crt", Right.OPEN),
          // the address of a calendar is a secret, and the right itself
          get("/calendar/{secret}", Right.OPEN),
          get("/me", Right.SELF),
          post("/me/password", Right.SELF, "set their password"),
          post("/me/phone/{id}/revoke", Right.SELF, "shut a phone out"),
          post("/me/*", Right.SELF),
          get("/accounts*", Right.CLUB),
          post("/accounts*", Right.CLUB),
          get("/clubs*", Right.CLUB),
          post("/clubs*", Right.CLUB),
          get("/phones*", Right.PHONES),
          post("/phones/code", Right.PHONES, "made a code for a phone"),
          post("/phones/{id}/revoke", Right.PHONES, "shut a phone out"),
          post("/phones/revoke-all", Right.PHONES, "shut all phones out"),
          post("/phones*", Right.PHONES),
          // reading marks, logging reps and taking them back
          get("/", Right.LOOK),
          get("/worker.js", Right.LOOK),
          get("/runway*", Right.LOG),
          post("/runway*", Right.LOG),
          get("/tapes", Right.LOOK),
          get("/card", Right.LOOK),
          get("/card.pdf", Right.LOOK),
          get("/here*", Right.LOG),
          get("/plan*", Right.LOOK),
          get("/season/week", Right.LOOK),
          get("/season/week.pdf", Right.LOOK),
          get("/season/week*", Right.LOG),
          get("/sources", Right.IN),
          get("/licences", Right.IN),
          get("/meet", Right.LOOK),
          get("/meet/{id}", Right.LOOK),
          post("/meet/{id}/attempt", Right.LOG),
          post("/meet/{id}/undo/{number}", Right.LOG),
          get("/athlete/new", Right.TEACH),
          post("/athlete/new", Right.TEACH, "added an athlete"),
          get("/athlete/{id}", Right.LOOK_AT),
          get("/athlete/{id}/marks", Right.LOOK_AT),
          get("/athlete/{id}/card", Right.LOOK_AT),
          post("/athlete/{id}/log", Right.LOG),
          post("/athlete/{id}/undo/{rep}", Right.LOG),
          // what is nobody's business at the runway: pain, holds, load, tests, films
          get("/athlete/{id}/care", Right.KNOW),
          post("/athlete/{id}/pain", Right.TELL, "entered pain"),
          post("/athlete/{id}/pain/{number}/settled", Right.TELL, "said whether a pain had settled"),
          post("/athlete/{id}/rating", Right.TELL),
          post("/athlete/{id}/hold", Right.CARE, "opened a medical hold"),
          post("/athlete/{id}/hold/{number}/end", Right.CLEAR, "entered the end of a medical hold"),
          post("/athlete/{id}/growing", Right.CARE, "said whether an athlete is growing"),
          get("/athlete/{id}/growth", Right.KNOW),
          post("/athlete/{id}/growth", Right.CARE, "entered a height"),
          post("/athlete/{id}/growth/{number}/remove", Right.CARE, "took a height out"),
          get("/athlete/{id}/back", Right.KNOW),
          post("/athlete/{id}/back", Right.CARE, "began a way back"),
          post("/athlete/{id}/back/{number}/step", Right.CARE, "stepped on a way back"),
          post("/athlete/{id}/back/{number}/end", Right.CARE, "ended a way back"),
          get("/athlete/{id}/load", Right.KNOW),
          get("/athlete/{id}/jump", Right.KNOW),
          get("/athlete/{id}/long-jump", Right.KNOW),
          get("/athlete/{id}/long-jump/run-up", Right.KNOW),
          get("/athlete/{id}/long-jump/aim", Right.KNOW),
          get("/athlete/{id}/take-offs", Right.KNOW),
          get("/athlete/{id}/run-up", Right.KNOW),
          get("/athlete/{id}/full-run", Right.KNOW),
          get("/athlete/{id}/aim", Right.KNOW),
          get("/athlete/{id}/tests", Right.KNOW),
          get("/athlete/{id}/report.pdf", Right.KNOW),
          get("/athlete/{id}/for/*", Right.KNOW),
          get("/squad-report*", Right.TEACH),
          get("/athlete/{id}/ready", Right.CARE),
          post("/athlete/{id}/override", Right.TEACH, "went on against the limits of load"),
          post("/athlete/{id}/erase", Right.LEAD, "erased an athlete"),
          post("/athlete/{id}/transfer", Right.LEAD, "offered an athlete to another club"),
          post("/athlete/{id}/transfer/withdraw", Right.LEAD, "withdrew the offer of an athlete"),
          post("/transfers/{id}/take", Right.LEAD, "took an athlete from another club"),
          post("/transfers/{id}/decline", Right.LEAD, "declined an athlete of another club"),
          post("/athlete/{id}/person", Right.TEACH, "kept a birth date"),
          post("/athlete/{id}/consent", Right.TEACH, "kept what was agreed to"),
          post("/athlete/{id}/withdraw", Right.TEACH, "withdrew what was agreed to"),
          get("/athlete/*", Right.TEACH),
          post("/athlete/*", Right.TEACH),
          post("/here*", Right.TEACH),
          post("/plan*", Right.TEACH),
          get("/group*", Right.TEACH),
          post("/group*", Right.TEACH),
          get("/athletes", Right.TEACH),
          post("/athletes", Right.TEACH, "added athletes"),
          get("/settings/backup*", Right.CLUB),
          post("/settings/backup/away", Right.CLUB, "took a backup away"),
          post("/settings/backup*", Right.CLUB),
          post("/settings/close", Right.MACHINE),
          get("/settings*", Right.LEAD),
          post("/settings*", Right.LEAD, "changed settings"),
          get("/season*", Right.TEACH),
          post("/season*", Right.TEACH),
          get("/watch", Right.CARE),
          get("/weather", Right.TEACH),
          post("/weather*", Right.TEACH),
          get("/meet/*", Right.TEACH),
          post("/meet*", Right.TEACH),
          get("/import", Right.LEAD),
          post("/import/look", Right.LEAD),
          post("/import*", Right.LEAD, "took a file or took one back"),
          get("/export.csv", Right.LEAD, "took all reps away as a file"),
          get("/clips*", Right.FILM),
          post("/clips/{id}/remove", Right.FILM, "removed a clip"),
          post("/clips*", Right.FILM));

  /**
   * What is said of a route.
   *
   * @param method {@code GET} or {@code POST}; {@code HEAD} counts as {@code GET}
   * @param route the path as it is registered, for example {@code /athlete/{id}}
   * @return empty if the table does not name it: then only the machine itself is let in
   */
  public static Optional<Line> of(String method, String route) {
    String asked = method.equals("HEAD") ? "GET" : method;
    return TABLE.stream().filter(l -> l.isOf(asked, route)).findFirst();
  }
}
