package boundwright.store;

import boundwright.store.engine.Database;
import java.util.Optional;
import java.util.function.LongSupplier;

/** The tokens of forms that were taken, in the database. */
final class SqlTaken {
  private final Database database;

  SqlTaken(Database database) {
    this.database = database;
  }

  Optional<Long> once(String token, LongSupplier work) {
    return database.write(
        h -> {
          if (numberOf(token).isPresent()) {
            return Optional.empty();
          }
          long number = work.getAsLong();
          h.createUpdate("INSERT INTO taken (token, number) VALUES (:token, :number)").bind("token", token).bind("number", number).execute();
          return Optional.of(number);
        });
  }

  Optional<Long> numberOf(String token) {
    return database.read(
        h -> h.createQuery("SELECT number FROM taken WHERE token = :token").bind("token", token).mapTo(Long.class).findOne());
  }
}
