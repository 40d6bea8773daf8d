package io.github.wattledger.cli.report.html;

import io.github.wattledger.season.RiderStanding;
import io.github.wattledger.season.SeasonReview;

/**
 * One of several riders.
 *
 * @param standing where the rider stands
 * @param season the rider's season
 * @param page the address of the season's page
 */
public record RiderSeason(RiderStanding standing, SeasonReview season, String page) {}
