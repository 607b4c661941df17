package boundwright.footfall;

/**
 * One flight of a sequence.
 *
 * @param order 1 for the flight after the first contact
 * @param from the foot that takes off
 * @param kind hop, bound, or the last jump
 */
public record Flight(int order, Foot from, FlightKind kind) {}
