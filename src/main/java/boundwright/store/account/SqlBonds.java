package boundwright.store.account;

import boundwright.account.AccountRepository.Link;
import boundwright.account.Bond;
import boundwright.account.BondRepository;
import boundwright.account.Identity;
import boundwright.account.Visit;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;

/** A department's logins in the first club's store. */
public final class SqlBonds implements BondRepository {
  private static final String BOND = "SELECT issuer, subject, account_id, since FROM department_bond ";

  private final Database store;
  private final Sessions sessions;

  /** In this store. */
  public SqlBonds(Database store) {
    this.store = store;
    this.sessions = new Sessions(store);
  }

  @Override
  public boolean send(Visit visit, Instant now, int most) {
    return store.write(
        h -> {
          h.createUpdate("DELETE FROM department_visit WHERE until <= :now").bind("now", now.getEpochSecond()).execute();
          if (h.createQuery("SELECT count(*) FROM department_visit").mapTo(Integer.class).one() >= most) {
            return false;
          }
          h.createUpdate(
                  "INSERT INTO department_visit (state, browser, nonce, verifier, purpose, session_id, link, until)"
                      + " VALUES (:state, :browser, :nonce, :verifier, :purpose, :session, :link, :until)")
              .bind("state", visit.state())
              .bind("browser", visit.browser())
              .bind("nonce", visit.nonce())
              .bind("verifier", visit.verifier())
              .bind("purpose", visit.purpose().name())
              .bind("session", visit.session())
              .bind("link", visit.link())
              .bind("until", visit.until().getEpochSecond())
              .execute();
          return true;
        });
  }

  @Override
  public Optional<Visit> back(String stateHash, Instant now) {
    return store.write(
        h -> {
          Optional<Visit> visit =
              h.createQuery("SELECT state, browser, nonce, verifier, purpose, session_id, link, until FROM department_visit WHERE state = :state")
                  .bind("state", stateHash)
                  .map((r, c) -> visit(r))
                  .findOne();
          // of two that come at once, one takes it
          int mine = h.createUpdate("DELETE FROM department_visit WHERE state = :state").bind("state", stateHash).execute();
          return visit.filter(v -> mine == 1 && v.until().isAfter(now));
        });
  }

  private static Visit visit(ResultSet r) throws SQLException {
    long session = r.getLong("session_id");
    Visit.Purpose purpose = Visit.Purpose.valueOf(r.getString("purpose"));
    return new Visit(
        r.getString("state"), r.getString("browser"), r.getString("nonce"), r.getString("verifier"), purpose,
        purpose == Visit.Purpose.CONNECT ? (Long) session : null, r.getString("link"), Instant.ofEpochSecond(r.getLong("until")));
  }

  @Override
  public Optional<Bond> of(Identity identity) {
    return store.read(
        h ->
            h.createQuery(BOND + "WHERE issuer = :issuer AND subject = :subject")
                .bind("issuer", identity.issuer())
                .bind("subject", identity.subject())
                .map((r, c) -> bond(r))
                .findOne());
  }

  @Override
  public Optional<Bond> of(long account, String issuer) {
    return store.read(
        h -> h.createQuery(BOND + "WHERE account_id = :account AND issuer = :issuer").bind("account", account).bind("issuer", issuer).map((r, c) -> bond(r)).findOne());
  }

  private static Bond bond(ResultSet r) throws SQLException {
    return new Bond(new Identity(r.getString("issuer"), r.getString("subject")), r.getLong("account_id"), Instant.ofEpochSecond(r.getLong("since")));
  }

  @Override
  public void add(Bond bond) {
    store.write(
        h -> {
          if (of(bond.identity()).isPresent()) {
            throw new RefusedException("This login is connected with an account already. Nothing was changed.");
          }
          if (of(bond.accountId(), bond.identity().issuer()).isPresent()) {
            throw new RefusedException("Your account is connected with another login there. Disconnect that one first. Nothing was changed.");
          }
          return h.createUpdate("INSERT INTO department_bond (issuer, subject, account_id, since) VALUES (:issuer, :subject, :account, :since)")
              .bind("issuer", bond.identity().issuer())
              .bind("subject", bond.identity().subject())
              .bind("account", bond.accountId())
              .bind("since", bond.since().getEpochSecond())
              .execute();
        });
  }

  @Override
  public Optional<Long> accept(String linkHash, Identity identity, Instant now) {
    return store.write(
        h ->
            sessions
                .offered(linkHash, now)
                .filter(Link::anew)
                .flatMap(link -> sessions.take(linkHash, now))
                .map(
                    link -> {
                      // a link has just forgotten this account's own; another's stays, and with it the link
                      add(new Bond(identity, link.accountId(), now));
                      return link.accountId();
                    }));
  }

  @Override
  public boolean remove(long account, String issuer) {
    return store.write(
            h -> h.createUpdate("DELETE FROM department_bond WHERE account_id = :account AND issuer = :issuer").bind("account", account).bind("issuer", issuer).execute())
        > 0;
  }
}
