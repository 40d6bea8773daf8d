package io.github.wattledger.cli.report.html;

import io.github.wattledger.season.RiderStanding;
import io.github.wattledger.season.SeasonReview;
import org.jspecify.annotations.Nullable;

/**
 * One of several riders.
 *
 * @param standing where the rider stands
 * @param season the rider's season
 * @param page the address of the season's page, or null where it has none
 */
public record RiderSeason(
        RiderStanding standing,
        SeasonReview season,
        @Nullable String page) {}
