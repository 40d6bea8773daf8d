package io.github.wattledger.simulation;

import io.github.wattledger.ride.Channel;

/** Rides a {@link Scenario} second by second. */
public final class RoadSimulation {
    private static final int LONGEST_RIDE_SECONDS = 24 * 3600;
    /** A recorder notices a standstill after so many seconds. */
    private static final int AUTO_PAUSE_DELAY_SECONDS = 3;
    /** Nobody pedals towards the brakes: from this share of the fastest speed on the rider coasts. */
    private static final double COASTING_SHARE = 0.95;

    private final Scenario scenario;
    private final Course course;
    private final RollingBody body;
    private final Pedalling pedalling;
    private final SimulatedRide.Log log;
    private final double startDistanceM;

    private double heartRateBpm;
    private int racingSeconds;

    private RoadSimulation(Scenario scenario) {
        this.scenario = scenario;
        course = scenario.course();
        body = new RollingBody(scenario);
        pedalling = new Pedalling(scenario);
        log = new SimulatedRide.Log(scenario);
        startDistanceM = body.distanceM();
        heartRateBpm = scenario.rider().heart().atZeroPowerBpm();
    }

    /**
     * Rides a scenario to its finish, where the recording ends.
     *
     * @throws IllegalStateException when the rider does not get there within a day
     */
    public static SimulatedRide ride(Scenario scenario) {
        return new RoadSimulation(scenario).run();
    }

    private SimulatedRide run() {
        log(0);
        Scenario.LeadIn leadIn = scenario.leadIn();
        if (!leadIn.equals(Scenario.LeadIn.NONE)) {
            rollToTheLine(leadIn);
        }
        racingSeconds = 0;
        log.raceStartsNow();
        for (Scenario.Stop stop : scenario.stops()) {
            raceTo(stop.distanceM());
            halt(stop);
            log.lap();
        }
        while (body.distanceM() < course.lengthM()) {
            raceSecond();
        }
        return log.finish(body.audit());
    }

    private void rollToTheLine(Scenario.LeadIn leadIn) {
        while (!body.mustBrakeFor(0)) {
            double watts = pedalling.easyPowerW(leadIn.powerW());
            body.rideSecond(watts);
            log(watts);
        }
        brakeToRest();
        while (log.seconds() <= leadIn.gunSecond()) {
            log(0);
        }
    }

    private void raceTo(double distanceM) {
        while (!body.mustBrakeFor(distanceM)) {
            raceSecond();
        }
        brakeToRest();
    }

    private void brakeToRest() {
        while (body.speedMps() > 0) {
            body.brakeSecond();
            racingSeconds++;
            log(0);
        }
    }

    private void raceSecond() {
        double fastestMps = scenario.surroundings().limits().mpsAt(body.distanceM());
        if (body.speedMps() > fastestMps) {
            body.brakeSecond();
            racingSeconds++;
            log(0);
            return;
        }
        PacingPlan.Moment moment = new PacingPlan.Moment(
                racingSeconds, body.distanceM(), course.gradeAt(body.distanceM()), body.speedMps());
        double meantW = pedalling.powerW(scenario.plan(), moment);
        double watts = body.speedMps() > COASTING_SHARE * fastestMps ? 0 : meantW;
        body.rideSecond(watts);
        racingSeconds++;
        log(watts);
        if (log.seconds() > LONGEST_RIDE_SECONDS) {
            throw new IllegalStateException("still on the road after a day, at " + body.distanceM() + " m");
        }
    }

    private void halt(Scenario.Stop stop) {
        int standingFrom = log.seconds();
        for (int i = 0; i < stop.seconds(); i++) {
            log(0);
        }
        if (stop.autoPause() && stop.seconds() > AUTO_PAUSE_DELAY_SECONDS) {
            log.pause(standingFrom + AUTO_PAUSE_DELAY_SECONDS, log.seconds());
        }
    }

    private void log(double watts) {
        double temperatureC = scenario.weather().temperatureC(log.seconds());
        HeartResponse heart = scenario.rider().heart();
        double settledBpm = heart.settledBpm(watts, racingSeconds, pedalling.debtKJ(), temperatureC);
        heartRateBpm += (settledBpm - heartRateBpm) / heart.lagSeconds();
        double distanceM = body.distanceM();
        log.put(Channel.POWER, watts)
                .put(Channel.HEART_RATE, heartRateBpm)
                .put(Channel.CADENCE, cadenceRpm(watts, course.gradeAt(distanceM)))
                .put(Channel.SPEED, body.speedMps())
                .put(Channel.DISTANCE, distanceM - startDistanceM)
                .put(Channel.ALTITUDE, course.altitudeAt(distanceM))
                .put(Channel.LATITUDE, course.latitudeAt(distanceM))
                .put(Channel.LONGITUDE, course.longitudeAt(distanceM))
                .put(Channel.TEMPERATURE, temperatureC)
                .endSecond();
    }

    /** Riders turn about 87 rpm on the flat and less on climbs; slower when soft-pedalling. */
    private static double cadenceRpm(double watts, double grade) {
        if (watts <= 0) {
            return 0;
        }
        double onGrade = 87 - 250 * StrictMath.max(0, grade);
        return StrictMath.max(55, StrictMath.min(105, onGrade + (watts - 180) * 0.03));
    }
}
