package boundwright.web.door;

import java.util.List;
import java.util.Optional;

/**
 * The one table of routes and rights. A route that no line names is refused to phones, so that a new page is shut until somebody has
 * thought about it; a test walks all routes of the server and finds each of them here.
 */
public final class Rights {
  private Rights() {}

  /**
   * @param method {@code GET}, {@code POST}
   * @param path the route as it is registered; with {@code *} at its end, all that begin so
   */
  private record Line(String method, String path, Right right) {
    boolean isOf(String asked, String route) {
      return method.equals(asked)
          && (path.endsWith("*") ? route.startsWith(path.substring(0, path.length() - 1)) : route.equals(path));
    }
  }

  private static Line get(String path, Right right) {
    return new Line("GET", path, right);
  }

  private static Line post(String path, Right right) {
    return new Line("POST", path, right);
  }

  /** The first line that fits counts. */
  private static final List<Line> TABLE =
      List.of(
          get("/assets/<name>", Right.OPEN),
          // for what watches over a server: says nothing of what is kept
          get("/health", Right.OPEN),
          get("/pair", Right.OPEN),
          get("/pair/{code}", Right.OPEN),
          post("/pair/{code}", Right.OPEN),
          get("/trust", Right.OPEN),
          get("/trust/authority.crt", Right.OPEN),
          // the address of a calendar is a secret, and the right itself
          get("/calendar/{secret}", Right.OPEN),
          // who lets phones in sits at the machine
          get("/phones*", Right.LAPTOP),
          post("/phones*", Right.LAPTOP),
          // reading marks, logging reps and taking them back
          get("/", Right.LOG),
          get("/worker.js", Right.LOG),
          get("/runway*", Right.LOG),
          post("/runway*", Right.LOG),
          get("/tapes", Right.LOG),
          get("/card", Right.LOG),
          get("/card.pdf", Right.LOG),
          get("/here*", Right.LOG),
          get("/plan*", Right.LOG),
          get("/season/week*", Right.LOG),
          get("/sources", Right.LOG),
          get("/licences", Right.LOG),
          get("/athlete/{id}", Right.LOG),
          get("/athlete/{id}/marks", Right.LOG),
          get("/athlete/{id}/card", Right.LOG),
          post("/athlete/{id}/log", Right.LOG),
          post("/athlete/{id}/undo/{rep}", Right.LOG),
          get("/meet", Right.LOG),
          get("/meet/{id}", Right.LOG),
          post("/meet/{id}/attempt", Right.LOG),
          post("/meet/{id}/undo/{number}", Right.LOG),
          // the rest changes the squad, or shows what is nobody's business at the runway: pain, holds, tests, films
          post("/here*", Right.ALL),
          post("/plan*", Right.ALL),
          get("/group*", Right.ALL),
          post("/group*", Right.ALL),
          get("/athletes", Right.ALL),
          post("/athletes", Right.ALL),
          get("/squad*", Right.ALL),
          post("/squad*", Right.ALL),
          get("/athlete/*", Right.ALL),
          post("/athlete/*", Right.ALL),
          // all that is kept of everybody leaves by this page
          get("/settings/backup*", Right.LAPTOP),
          post("/settings/backup*", Right.LAPTOP),
          post("/settings/close", Right.LAPTOP),
          get("/settings*", Right.ALL),
          post("/settings*", Right.ALL),
          get("/season*", Right.ALL),
          post("/season*", Right.ALL),
          get("/watch", Right.ALL),
          get("/meet/*", Right.ALL),
          post("/meet*", Right.ALL),
          get("/import", Right.ALL),
          post("/import*", Right.ALL),
          get("/export.csv", Right.ALL),
          get("/clips*", Right.ALL),
          post("/clips*", Right.ALL));

  /**
   * What a route needs.
   *
   * @param method {@code GET} or {@code POST}; {@code HEAD} counts as {@code GET}
   * @param route the path as it is registered, for example {@code /athlete/{id}}
   * @return empty if the table does not name it: then only the machine itself is let in
   */
  public static Optional<Right> of(String method, String route) {
    String asked = method.equals("HEAD") ? "GET" : method;
    return TABLE.stream().filter(l -> l.isOf(asked, route)).map(Line::right).findFirst();
  }
}
