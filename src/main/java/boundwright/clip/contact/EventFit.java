package boundwright.clip.contact;

/**
 * A time read off a point's path.
 *
 * @param time [s]
 * @param sd standard deviation [s]
 * @param x0 where the point stands on the ground's side of the event [m]
 * @param y0 how high it stands there [m]
 * @param vx speed forward on the flight's side of the event, at the event [m/s]; 0 for a take-off
 * @param vy speed upward there [m/s]
 */
record EventFit(double time, double sd, double x0, double y0, double vx, double vy) {}
