package boundwright.web.account;

import boundwright.athlete.Athlete;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.store.transfer.Transfers;
import boundwright.web.athlete.EditHandler;
import boundwright.web.page.Addresses;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;

/** Offers an athlete to another club, and takes or declines what this one is offered. */
public final class TransferHandler {
  private final Workbench bench;
  private final Gate gate;
  private final Transfers transfers;
  private final EditHandler giving;
  private final AccountsHandler taking;

  /**
   * @param bench of the club whose pages these are
   * @param giving the page on which an athlete is offered
   * @param taking the page on which offers stand
   */
  public TransferHandler(Workbench bench, Gate gate, Transfers transfers, EditHandler giving, AccountsHandler taking) {
    this.bench = bench;
    this.gate = gate;
    this.transfers = transfers;
    this.giving = giving;
    this.taking = taking;
  }

  /** Registers the routes. */
  public void add(RoutesConfig routes) {
    routes.post("/athlete/{id}/transfer", this::offer);
    routes.post("/athlete/{id}/transfer/withdraw", this::withdraw);
    routes.post("/transfers/{id}/take", this::take);
    routes.post("/transfers/{id}/decline", this::decline);
  }

  private void offer(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    try {
      transfers.offer(club(ctx), athlete, Form.id(Form.text(ctx, "club")));
    } catch (RefusedException e) {
      giving.show(ctx, 422, athlete, "transfer", String.valueOf(e.getMessage()), "");
      return;
    }
    back(ctx, athlete);
  }

  private void withdraw(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    transfers.withdraw(club(ctx), athlete.id());
    back(ctx, athlete);
  }

  private static void back(Context ctx, Athlete athlete) {
    ctx.redirect("/athlete/" + athlete.id() + "/edit#data-head", HttpStatus.SEE_OTHER);
  }

  private void take(Context ctx) {
    try {
      ctx.redirect("/athlete/" + transfers.take(club(ctx), Form.id(ctx.pathParam("id"))), HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      taking.refused(ctx, String.valueOf(e.getMessage()));
    }
  }

  private void decline(Context ctx) {
    try {
      transfers.decline(club(ctx), Form.id(ctx.pathParam("id")));
      ctx.redirect("/accounts", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      taking.refused(ctx, String.valueOf(e.getMessage()));
    }
  }

  private long club(Context ctx) {
    return gate.caller(ctx).club();
  }
}
