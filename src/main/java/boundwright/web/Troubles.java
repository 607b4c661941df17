package boundwright.web;

import boundwright.quantity.RefusedException;
import boundwright.web.page.Arrival;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Says in words what did not work. */
final class Troubles {
  private static final Logger LOG = LoggerFactory.getLogger(Troubles.class);

  private Troubles() {}

  /** Registers what is answered when something was refused, not found, or went wrong. */
  static void say(RoutesConfig routes, Pages pages, Gate gate) {
    routes.exception(Turned.class, (e, ctx) -> turned(pages, ctx, e));
    routes.exception(RefusedException.class, (e, ctx) -> pages.message(ctx, 422, heading(422), String.valueOf(e.getMessage())));
    routes.exception(
        HttpResponseException.class,
        (e, ctx) -> {
          // a stranger is not told which pages there are
          boolean stranger = gate.caller(ctx).stranger();
          int status = stranger ? 401 : e.getStatus();
          pages.message(ctx, status, heading(status), stranger ? String.valueOf(gate.stranger().getMessage()) : sentence(status, ctx));
        });
    routes.exception(
        Exception.class,
        (e, ctx) -> {
          Turned outside = Arrival.said(e);
          if (outside != null) {
            turned(pages, ctx, outside);
            return;
          }
          String id = gate.fresh().substring(0, 8);
          LOG.error("Request {} {} failed, number {}", ctx.method(), ctx.path(), id, e);
          pages.message(
              ctx,
              500,
              "Something went wrong in the program",
              "Nothing that was logged before is lost. Go back and try once more; if it happens again, report number " + id
                  + " with the lines that the program wrote.");
        });
  }

  private static void turned(Pages pages, Context ctx, Turned e) {
    if (e.status() == 400 || e.status() == 408) {
      // the rest of what was sent is read by nobody, so the connection is of no more use; who is not told would send the next request into it
      ctx.header("Connection", "close");
    }
    pages.message(ctx, e.status(), heading(e.status()), String.valueOf(e.getMessage()));
  }

  private static String heading(int status) {
    return switch (status) {
      case 404 -> "Not found";
      case 401 -> "Who is there?";
      case 403, 421 -> "Not from here";
      case 429 -> "Wait a little";
      case 408 -> "It broke off";
      case 503 -> "Wait a little";
      case 507 -> "The disk is full";
      case 411, 413 -> "Too large";
      case 422 -> "That cannot be taken";
      default -> "That did not work";
    };
  }

  private static String sentence(int status, Context ctx) {
    return switch (status) {
      case 404 -> "There is no page at " + ctx.path() + ". Choose one from the menu.";
      case 413 -> "What was sent is too large; nothing was taken. Cut a long file in two.";
      default -> "The request was answered with status " + status + "; nothing was changed.";
    };
  }
}
