import { createReadStream, statSync } from 'node:fs'
import { basename } from 'node:path'
import { Command, InvalidArgumentError, Option } from 'commander'
import { addWeatherStation, keepWeather, listWeatherStations, type WeatherRoom } from '../../desk/index.js'
import { closestNames, suggest } from '../../guide/index.js'
import { weatherStationByName, weatherStations } from '../../store/index.js'
import { DEFAULT_TREES, requireGuide } from '../guide-option.js'
import { notice, print } from '../terminal.js'
import { faultLine, stationLines } from '../weather-lines.js'
import { withStore } from '../with-store.js'

const STATION_ID = /^[a-z0-9][a-z0-9-]*$/

/** `frondline weather`: the stations and their records. Works on the store while the service runs. */
export function weatherCommand(): Command {
  return new Command('weather')
    .description('Weather stations and what they recorded: bring in CSV files, see what is missing. The columns of the files stand in README.md.')
    .addCommand(importCommand())
    .addCommand(stationsCommand())
    .addCommand(new Command('station')
      .description('Make a weather station known.')
      .addCommand(addCommand()))
}

function importCommand(): Command {
  return new Command('import')
    .description('Bring in a CSV file of one station. A file with faults is refused whole, each fault with its place; bringing in a file again changes nothing.')
    .argument('<file>', 'a CSV file: one line a day with "date", or one line an hour with "time"')
    .requiredOption('--station <id>', 'the station that recorded it')
    .option('--skip-faulty', 'leave out faulty lines and keep the others')
    .action((file: string, options: { station: string; skipFaulty?: boolean }) => withWeather(async (room) => {
      const station = await weatherStationByName(room.db, options.station)
      if (station === undefined) {
        const names = (await weatherStations(room.db)).map(({ name }) => name)
        throw new Error(`There is no station "${options.station}". ${suggest(closestNames(options.station, names))} See frondline weather stations.`.replace('  ', ' '))
      }
      if (statSync(file, { throwIfNoEntry: false })?.isFile() !== true) throw new Error(`There is no file "${file}". Expected a CSV file.`)
      const { kind, kept, faults, isRefused } = await keepWeather(room, station, { origin: basename(file), open: () => createReadStream(file) }, options.skipFaulty)
      notice(...faults.first.map((fault) => faultLine(file, fault)))
      if (faults.count > faults.first.length) notice(`... and ${faults.count - faults.first.length} more.`)
      if (isRefused) {
        notice(`Nothing was kept. ${kind === null ? 'Mend the first line.' : 'Mend the file, or leave out its faulty lines with --skip-faulty.'}`)
        process.exitCode = 1
      } else print(`Kept ${kept} ${kind === 'daily' ? 'day' : 'hour'}${kept === 1 ? '' : 's'} of ${station.title}.`)
    }))
}

function stationsCommand(): Command {
  return new Command('stations')
    .description('List the stations: how fresh their records are, what is missing, and what came of the last readings.')
    .option('--json', 'as one JSON list')
    .action(({ json }: { json?: boolean }) => withWeather(async (room) => {
      const states = await listWeatherStations(room)
      if (json === true) print(JSON.stringify(states))
      else if (states.length === 0) print('There is no station yet. Add one with: frondline weather station add')
      else print(...states.flatMap(stationLines))
    }))
}

interface NewStation { readonly title: string; readonly district: string; readonly latitude: number; readonly longitude: number; readonly clock: number; readonly trees: string }

function addCommand(): Command {
  return new Command('add')
    .description('Add a station.')
    .argument('<id>', 'its id: small letters, digits and hyphens', (id: string) => {
      if (STATION_ID.test(id)) return id
      throw new InvalidArgumentError('Expected small letters, digits and hyphens, such as holt-fen-school.')
    })
    .requiredOption('--title <name>', 'what people call it')
    .requiredOption('--district <id>', 'the district of region.yaml that it stands for')
    .addOption(new Option('--latitude <degrees>', 'north positive').argParser(between(-90, 90)).makeOptionMandatory())
    .addOption(new Option('--longitude <degrees>', 'east positive').argParser(between(-180, 180)).makeOptionMandatory())
    .addOption(new Option('--clock <offset>', 'how far its clock is from UTC all year round, without summer time').argParser(clockMinutes).default(0, '+00:00'))
    .option('--trees <dir>', 'folder that holds the guide', DEFAULT_TREES)
    .addHelpText('after', '\nfrondline weather station add holt-fen-school --title "Holt Fen School" --district holt-fen --latitude 52.4 --longitude -0.1')
    .action((id: string, { title, district, latitude, longitude, clock, trees }: NewStation) => withWeather(async (room) => {
      const { region } = await requireGuide(trees)
      if (!region.districts.has(district)) {
        throw new Error(`region.yaml has no district "${district}". ${suggest(closestNames(district, region.districts.keys()))} Expected one of: ${[...region.districts.keys()].join(', ')}.`.replace('  ', ' '))
      }
      if (!await addWeatherStation(room, { id, name: title, district, latitude, longitude, clockMinutes: clock })) {
        throw new Error(`There is a station "${id}" already. See frondline weather stations.`)
      }
      print(`${title} is known as ${id}. Bring in its records with: frondline weather import FILE --station ${id}`)
    }))
}

const between = (least: number, most: number) => (text: string): number => {
  const value = /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : NaN
  if (value >= least && value <= most) return value
  throw new InvalidArgumentError(`Expected degrees from ${least} to ${most}, such as 52.4.`)
}

function clockMinutes(text: string): number {
  const [, sign, hours = '', minutes = ''] = /^([+-])(\d{2}):(\d{2})$/.exec(text) ?? []
  const ahead = Number(hours) * 60 + Number(minutes)
  if (sign === undefined || ahead > 14 * 60 || Number(minutes) > 59) throw new InvalidArgumentError('Expected an offset from UTC such as +01:00 or -05:30.')
  return sign === '-' ? -ahead : ahead
}

function withWeather(work: (room: WeatherRoom) => Promise<void>): Promise<void> {
  return withStore(({ db }) => work({ db, now: () => new Date() }))
}
